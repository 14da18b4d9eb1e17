import { useRef } from 'preact/hooks'
import type { Answer } from '../door/protocol.ts'
import { scaleFor } from '../chart/scale.ts'
import { StripChart } from '../chart/StripChart.tsx'
import { Tally } from '../chart/Tally.tsx'
import { Figure } from './answers/Figure.tsx'
import { useApp } from './context.ts'
import { Drawing } from './Drawing.tsx'
import { useQuiet } from './useQuiet.ts'
import { useScrolls } from './useScrolls.ts'

/** The season in short: the lines the sheet puts first. */
export function SeasonPanel() {
  const app = useApp()
  const reckoning = app.reckoning.value
  const panel = useRef<HTMLElement>(null)
  const scrolls = useScrolls(panel)
  const first = (reckoning?.lines ?? []).filter((answer) => answer.headline)
  const said = useQuiet(first.map((a) => `${a.label}: ${a.shown.middle}, between ${a.shown.low} and ${a.shown.high}`).join('. '))
  return (
    <section ref={panel} class="season" aria-labelledby="season-in-short" {...(scrolls ? { tabIndex: 0 } : {})}>
      <h2 id="season-in-short">The season in short</h2>
      {reckoning === undefined ? (
        <>
          <p class="waiting">The seasons are being drawn…</p>
          <Drawing />
        </>
      ) : (
        <>
          <dl>
            {first.map((answer) => (
              <Headline key={answer.id} answer={answer} />
            ))}
          </dl>
          <p class="drawn">
            {reckoning.seasons.toLocaleString('en-US')} seasons drawn. In 8 of 10 a line falls within its range.
          </p>
          <Drawing />
        </>
      )}
      <p role="status" class="unseen">
        {said}
      </p>
    </section>
  )
}

/** The same in plain words, as the reckoner tells it. */
export function SeasonTold() {
  const app = useApp()
  const paragraph = app.reckoning.value?.paragraph
  return paragraph ? <p class="paragraph">{paragraph}</p> : null
}

/** As wide as the tally below it. */
const stripWidth = 124

function Headline({ answer }: { answer: Answer }) {
  const { shown } = answer
  const scale = scaleFor([answer], stripWidth)
  return (
    <div class="headline" data-line={answer.id}>
      <dt>{answer.label}</dt>
      <dd>
        <Figure id={answer.id} label={answer.label} shown={shown.middle} />
      </dd>
      {scale !== undefined && (
        <dd class="spread-out">
          <StripChart answer={answer} scale={scale} height={16} />
          <span class="between">{shown.low === shown.high ? 'near enough every season' : `${shown.low} to ${shown.high}`}</span>
        </dd>
      )}
      {answer.goal_met !== null && shown.goal && (
        <dd class="goal">
          <Tally share={answer.goal_met} />
          <span>
            {answer.goal ?? 'goal met'}: <strong>{shown.goal}</strong>
          </span>
        </dd>
      )}
    </div>
  )
}
