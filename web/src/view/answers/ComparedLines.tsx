import { scaleFor } from '../../chart/scale.ts'
import { StripChart } from '../../chart/StripChart.tsx'
import { type ComparedDifference, type ComparedLine, type Comparison, list } from '../../door/answers.ts'
import { DataTable } from './DataTable.tsx'

const stripWidth = 130

/** Each outcome in every sheet, on one scale, with its difference to the first. */
export function ComparedLines({ comparison }: { comparison: Comparison }) {
  const { scenarios } = comparison
  const rows = list(comparison.lines).map((line) => ({ key: line.id, cells: [line.label, ...scenarios.map((_, i) => <InScenario key={i} line={line} at={i} />)] }))
  return <DataTable quiet caption="Each outcome, sheet by sheet" head={['Outcome', ...scenarios.map(({ short, title }) => short || title)]} rows={rows} />
}

function InScenario({ line, at }: { line: ComparedLine; at: number }) {
  const value = line.values[at]
  const scale = scaleFor(line.values, stripWidth)
  if (value === undefined) return <span class="nothing-yet">—</span>
  const difference = line.difference.find(({ scenario }) => scenario === at)
  return (
    <>
      <span class="figure">{value.shown.middle}</span>
      {scale !== undefined && <StripChart answer={value} scale={scale} height={14} />}
      {value.shown.low !== value.shown.high && (
        <span class="between">
          {value.shown.low} to {value.shown.high}
        </span>
      )}
      {difference !== undefined && <Difference difference={difference} />}
    </>
  )
}

function Difference({ difference: { shown } }: { difference: ComparedDifference }) {
  const certain = shown.low === shown.high
  return (
    <span class="difference">
      <strong>{shown.middle}</strong>
      {!certain && ` (${shown.low} to ${shown.high})`}
      {shown.ahead && <span class="ahead">ahead in {shown.ahead}</span>}
    </span>
  )
}
