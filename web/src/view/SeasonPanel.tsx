import { useRef } from 'preact/hooks'
import type { Answer } from '../door/protocol.ts'
import { scaleFor } from '../chart/scale.ts'
import { StripChart } from '../chart/StripChart.tsx'
import { TwentyBuckets } from '../chart/TwentyBuckets.tsx'
import { standsOtherwise } from '../state/ghost.ts'
import { Figure } from './answers/Figure.tsx'
import { useApp } from './context.ts'
import { Drawing } from './Drawing.tsx'
import { LastChange } from './LastChange.tsx'
import { SeasonAtFoot } from './SeasonAtFoot.tsx'
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
          <LastChange />
          <dl>
            {first.map((answer) => (
              <Headline key={answer.id} answer={answer} before={standsOtherwise(answer, app.editing.before.value?.get(answer.id))} />
            ))}
          </dl>
          <p class="drawn">
            {reckoning.seasons.toLocaleString('en-US')} seasons drawn. In 8 of 10 a line falls within its range.
          </p>
          <Drawing />
        </>
      )}
      <SeasonAtFoot panel={panel} />
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

/** As wide as the buckets below it. */
const stripWidth = 124

/** One outcome: its middle and range, twenty seasons of it, its goal, and how all that was before the last change. */
function Headline({ answer, before }: { answer: Answer; before: Answer | undefined }) {
  const { shown } = answer
  const scale = scaleFor(before === undefined ? [answer] : [answer, before], stripWidth)
  return (
    <div class="headline" data-line={answer.id}>
      <dt>{answer.label}</dt>
      <dd>
        <Figure id={answer.id} label={answer.label} shown={shown.middle} />
      </dd>
      {before !== undefined && <dd class="was">was {before.shown.middle}</dd>}
      {scale !== undefined && (
        <dd class="spread-out">
          <StripChart answer={answer} scale={scale} height={16} before={before} />
          <span class="between">{shown.low === shown.high ? 'near enough every season' : `${shown.low} to ${shown.high}`}</span>
        </dd>
      )}
      {answer.dots !== undefined && (
        <dd class="goal">
          <TwentyBuckets answer={answer} before={before} />
          {answer.goal_met !== null && shown.goal && (
            <span>
              {answer.goal ?? 'goal met'}: <strong>{shown.goal}</strong>
              {before?.shown.goal && before.shown.goal !== shown.goal && <span class="was"> was {before.shown.goal}</span>}
            </span>
          )}
        </dd>
      )}
    </div>
  )
}
