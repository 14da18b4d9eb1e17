import { type CurvePoint, drawGuess, type Marks } from './guessCurve.ts'

const width = 300
const height = 84
/** Room below the ground for the marks. */
const foot = 10

interface Props {
  curve: readonly CurvePoint[]
  marks: Marks
  /** The same in words. */
  says: string
}

/** How likely each value is: the higher the curve, the more seasons come out near. What lies between low and high is filled. */
export function GuessCurve({ curve, marks, says }: Props) {
  const drawing = drawGuess(curve, marks, { width, height })
  if (drawing === undefined) return null
  return (
    <svg class="guess-curve" role="img" aria-label={says} viewBox={`-2 -2 ${width + 4} ${height + foot + 4}`} width={width + 4} height={height + foot + 4}>
      <path class="inside" d={drawing.inside} />
      <path class="outline" d={drawing.outline} />
      <line class="ground" x1={0} x2={width} y1={height} y2={height} />
      {[drawing.low, drawing.high].map((x, i) => (
        <line key={i} class="end" x1={x} x2={x} y1={height - 6} y2={height + foot} />
      ))}
      <line class="likely" x1={drawing.likely} x2={drawing.likely} y1={6} y2={height + foot} />
    </svg>
  )
}
