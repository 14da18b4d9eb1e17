/** A point of a density: its value, and its height, the highest being 1. */
export interface CurvePoint {
  at: number
  height: number
}

/** The three numbers of a guess as they are asked for. */
export interface Marks {
  low: number
  likely: number
  high: number
}

export interface GuessDrawing {
  /** The outline from end to end. */
  outline: string
  /** The part between low and high, closed along the ground. */
  inside: string
  low: number
  likely: number
  high: number
}

interface Size {
  width: number
  height: number
}

/** A density drawn in pixels, with room for the guess's own numbers; undefined when there is nothing to draw. */
export function drawGuess(curve: readonly CurvePoint[], marks: Marks, { width, height }: Size): GuessDrawing | undefined {
  const first = curve[0]
  const last = curve.at(-1)
  if (first === undefined || last === undefined) return undefined
  const from = Math.min(first.at, marks.low)
  const to = Math.max(last.at, marks.high)
  if (!(to > from)) return undefined
  const x = (at: number): number => ((at - from) / (to - from)) * width
  const y = (h: number): number => height - h * height
  const path = (points: readonly CurvePoint[]): string => points.map((p) => `${round(x(p.at))} ${round(y(p.height))}`).join('L')
  const between = [pointAt(curve, marks.low), ...curve.filter((p) => p.at > marks.low && p.at < marks.high), pointAt(curve, marks.high)]
  return {
    outline: `M${path(curve)}`,
    inside: `M${round(x(marks.low))} ${height}L${path(between)}L${round(x(marks.high))} ${height}Z`,
    low: round(x(marks.low)),
    likely: round(x(marks.likely)),
    high: round(x(marks.high)),
  }
}

/** The curve's own point at a value, on the straight line between its neighbours; on the ground beyond its ends. */
function pointAt(curve: readonly CurvePoint[], at: number): CurvePoint {
  const next = curve.findIndex((p) => p.at >= at)
  const b = curve[next]
  const a = curve[next - 1]
  if (b === undefined) return { at, height: 0 }
  if (a === undefined) return { at, height: b.at === at ? b.height : 0 }
  return { at, height: a.height + ((at - a.at) / (b.at - a.at)) * (b.height - a.height) }
}

function round(pixels: number): number {
  return Math.round(pixels * 100) / 100
}
