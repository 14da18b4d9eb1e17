import { useMemo, useState } from 'preact/hooks'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import { swingsOf, swingsPicture } from '../../chart/swings.ts'
import { list, type Movers } from '../../door/answers.ts'
import type { OpenSheet } from '../../state/app.ts'
import { linesOf, type Pick } from '../../state/lines.ts'
import '../../style/answers.css'
import { useApp } from '../context.ts'
import { Answered } from './Answered.tsx'
import { DataTable } from './DataTable.tsx'
import { PickLine } from './PickLine.tsx'
import { useAsk } from './useAsk.ts'

/** How many guesses are drawn; the table has all that matter. */
const most = 12

/** Which guesses move an outcome, and how far. */
export function MoversPage({ sheet }: { sheet: OpenSheet }) {
  const app = useApp()
  const heads = (app.reckoning.value?.lines ?? []).filter(({ headline }) => headline)
  const picks = useMemo((): Pick[] => {
    const first = heads.map(({ id, label, kind, unit }): Pick => ({ id, label, kind, unit, group: 'What the sheet puts first' }))
    return [...first, ...linesOf(sheet.view).filter(({ id, kind }) => kind === 'formula' && !first.some((line) => line.id === id))]
  }, [sheet.view, heads.map(({ id }) => id).join()])
  const [picked, pick] = useState<string | undefined>(undefined)
  const outcome = picked ?? heads.findLast(({ better }) => better === 'more')?.id ?? picks[0]?.id
  const asked = useAsk<Movers>('movers', outcome === undefined ? undefined : { for: outcome })
  return (
    <section class="answer-page" aria-labelledby="page-title">
      <h2 id="page-title">What moves it</h2>
      <p class="page-lede">Which guesses matter: where a better number, or a better habit, would change the season most.</p>
      <PickLine label="Outcome" picks={picks} picked={outcome} onPick={pick} />
      <Answered asked={asked} waiting="The movers are">
        {(movers) => <Moved movers={movers} />}
      </Answered>
    </section>
  )
}

function Moved({ movers }: { movers: Movers }) {
  const { outcome } = movers
  const draw = useMemo(() => (width: number) => swingsPicture(movers, most, width), [movers])
  const drawn = swingsOf(movers, most)
  const apart = list(movers.apart)
  return (
    <>
      <p class="told">{movers.paragraph}</p>
      {drawn.length > 0 && (
        <>
          <p class="axis-words">
            Each bar: {outcome.label.toLowerCase()}, {outcome.unit}, as that guess alone goes from its low to its high. The upright line: all at their likely numbers,{' '}
            {outcome.shown.likely}.
          </p>
          <PlotFigure
            label={`How ${outcome.label.toLowerCase()} swings: ${drawn.map((swing) => `${swing.label}, ${swing.left} to ${swing.right}`).join('; ')}. The same numbers stand in the table below.`}
            draw={draw}
          />
        </>
      )}
      <MoversTable movers={movers} />
      {apart.length > 0 && (
        <details class="as-numbers">
          <summary>Guesses that {outcome.label.toLowerCase()} does not hang on</summary>
          <p>{apart.map(({ label }) => label).join(' · ')}</p>
        </details>
      )}
    </>
  )
}

function MoversTable({ movers }: { movers: Movers }) {
  const { label } = movers.outcome
  const all = list(movers.movers)
    .filter(({ total }) => !total.about_zero)
    .flatMap((mover) =>
      mover.guesses.map((guess, i) => ({
        key: guess.id,
        cells: [
          guess.label,
          i > 0 ? 'with the one above' : mover.first.shown,
          i > 0 ? 'with the one above' : mover.total.shown,
          `${guess.shown.at_low} at ${guess.shown.low}`,
          `${guess.shown.at_high} at ${guess.shown.high}`,
        ],
      })),
    )
  if (all.length === 0) return null
  const head = ['Guess', 'By itself', 'All it has a hand in', 'At its low', 'At its high']
  return (
    <>
      <DataTable caption={`What makes ${label.toLowerCase()} differ from season to season`} head={head} rows={all.slice(0, most)} />
      {all.length > most && (
        <details class="as-numbers">
          <summary>The other {all.length - most} guesses, which matter less</summary>
          <DataTable quiet caption={`Guesses that move ${label.toLowerCase()} less`} head={head} rows={all.slice(most)} />
        </details>
      )}
    </>
  )
}
