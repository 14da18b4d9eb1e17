import type { Answer } from '../door/protocol.ts'
import { bucketsOf, meetWords } from './buckets.ts'

const size = { step: 6.3, gap: 1.3, height: 26 }

interface Props {
  answer: Answer
  before: Answer | undefined
}

/** Twenty seasons that stand for all, from the lowest: full buckets meet the goal, empty ones do not; a dashed step shows how they stood before. */
export function TwentyBuckets({ answer, before }: Props) {
  if (answer.dots === undefined || answer.dots.length === 0) return null
  const meets = answer.goal_dots ?? []
  const { buckets, width, ground, before: steps } = bucketsOf(answer.dots, meets, before?.dots ?? [], size)
  const words = ['Twenty seasons from the lowest to the highest', `8 of 10 between ${answer.shown.low} and ${answer.shown.high}`, meetWords(meets)]
  return (
    <svg
      class="twenty"
      role="img"
      aria-label={words.filter((w) => w !== '').join('; ')}
      viewBox={`-1 -1 ${width + 2} ${size.height + 2}`}
      width={width + 2}
      height={size.height + 2}
    >
      {buckets.map((b, i) => (
        <rect key={i} class={b.meets === false ? 'misses' : 'meets'} x={b.x} y={b.y} width={size.step - size.gap} height={Math.max(b.height, 0.6)} />
      ))}
      <line class="ground" x1={0} x2={width} y1={ground} y2={ground} />
      {steps !== '' && <path class="before" d={steps} />}
    </svg>
  )
}
