import { useMemo } from 'preact/hooks'
import { type Bar, barsPicture } from '../../chart/bars.ts'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import { type ComparedDifference, list } from '../../door/answers.ts'
import { AsNumbers } from './AsNumbers.tsx'
import { DataTable } from './DataTable.tsx'

/** The changes behind a difference, each by what it does alone, then what they do only jointly, then the whole. */
export function ExplainedBars({ difference, unit }: { difference: ComparedDifference; unit: string }) {
  const bars = barsOf(difference)
  const draw = useMemo(() => (width: number) => barsPicture(bars, width), [difference])
  // One change alone is the whole difference: there is nothing to set apart.
  if (bars.length < 3) return null
  return (
    <>
      <PlotFigure label={`What each change does to the mean, ${unit}: ${bars.map((bar) => `${bar.label} ${bar.shown}`).join('; ')}`} draw={draw} />
      <AsNumbers of="The changes">
        <DataTable quiet caption="What each change does to the mean" head={['Change', 'Alone']} rows={bars.map((bar) => ({ key: bar.key, cells: [bar.label, bar.shown] }))} />
      </AsNumbers>
    </>
  )
}

function barsOf({ explained, together, mean, shown }: ComparedDifference): Bar[] {
  const each = [...list(explained).map((change, i) => ({ ...change, key: `${i}` })), ...(together.mean === 0 ? [] : [{ ...together, key: 'together' }])]
  const bars = each.flatMap(({ key, label, mean: value, shown: said }): Bar[] => (value === null ? [] : [{ key, label, value, shown: said }]))
  return mean === null ? bars : [...bars, { key: 'whole', label: 'all of it, in the mean', value: mean, shown: shown.mean, whole: true }]
}
