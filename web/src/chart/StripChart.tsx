import type { Shown } from '../door/protocol.ts'
import type { Scale, Spread } from './scale.ts'
import { stripOf, stripText } from './strip.ts'

interface Props {
  answer: Spread & { shown: Pick<Shown, 'low' | 'middle' | 'high'> }
  scale: Scale
  height: number
  /** How it stood before the last change, drawn as an outline on the same scale. */
  before?: Spread | undefined
}

/** Room on either side, so that a mark at the end of the scale is whole. */
const margin = 3

/** A range as a strip: thin line 9 seasons of 10, thick line 8 of 10, upright mark the middle, short mark zero; dashed, how it was. */
export function StripChart({ answer, scale, height, before }: Props) {
  const strip = stripOf(answer, scale)
  if (strip === undefined) return null
  const was = before && stripOf(before, scale)
  const mid = height / 2
  const bar = height / 3
  return (
    <svg
      class="strip"
      role="img"
      aria-label={stripText(answer.shown)}
      viewBox={`${-margin} 0 ${scale.width + 2 * margin} ${height}`}
      width={scale.width + 2 * margin}
      height={height}
    >
      <line class="ground" x1={0} x2={scale.width} y1={height - 1} y2={height - 1} />
      <line class="zero" x1={strip.zero} x2={strip.zero} y1={height - bar} y2={height} />
      {!strip.certain && (
        <>
          <line class="tails" x1={strip.tails.from} x2={strip.tails.to} y1={mid} y2={mid} />
          <rect class="range" x={strip.range.from} y={mid - bar / 2} width={strip.range.to - strip.range.from} height={bar} />
        </>
      )}
      {was && (
        <path class="before" d={`M${was.range.from} 1V${height - 2}H${was.range.to}V1ZM${was.middle} 1V${height - 2}`} />
      )}
      <line class="middle" x1={strip.middle} x2={strip.middle} y1={1} y2={height - 2} />
    </svg>
  )
}
