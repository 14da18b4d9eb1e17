import { useMemo } from 'preact/hooks'
import { type Bar, barsPicture } from '../../chart/bars.ts'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import { list, type Worth } from '../../door/answers.ts'
import { DataTable } from './DataTable.tsx'

const most = 8

/** What it would be worth to know each guess before choosing between the sheets. */
export function WorthKnowing({ worth }: { worth: Worth }) {
  const guesses = list(worth.guesses).filter((guess) => !guess.worth.about_nothing).slice(0, most)
  const bars: Bar[] = guesses.map(({ id, label, worth: { value, shown } }) => ({ key: id, label, value, shown: shown.value }))
  const draw = useMemo(() => (width: number) => barsPicture(bars, width), [worth])
  return (
    <>
      <p>{worth.paragraph}</p>
      {bars.length > 1 && <PlotFigure label={`Worth of knowing, for one season: ${bars.map((bar) => `${bar.label} ${bar.shown}`).join('; ')}`} draw={draw} />}
      {guesses.length > 0 && (
        <DataTable
          caption="What it is worth to know, for one season"
          head={['Guess', 'Worth', 'Would change the choice in', 'Where it turns']}
          rows={guesses.map(({ id, label, note, worth: { shown }, sentence }) => ({
            key: id,
            cells: [<>{label}{note && <span class="line-note">{note}</span>}</>, shown.value, shown.changes, sentence ?? '—'],
          }))}
        />
      )}
    </>
  )
}
