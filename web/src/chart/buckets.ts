/** One of twenty seasons as a bucket, in pixels. */
export interface Bucket {
  x: number
  /** Top and height of what stands in it; a value below zero hangs from the ground. */
  y: number
  height: number
  /** Whether the season meets the goal; undefined without one. */
  meets: boolean | undefined
}

export interface Buckets {
  buckets: Bucket[]
  width: number
  /** Where the ground, zero, lies. */
  ground: number
  /** The seasons before the last change, as steps; empty when there are none. */
  before: string
}

interface Size {
  /** Of one bucket with the gap after it. */
  step: number
  gap: number
  height: number
}

/**
 * Twenty seasons side by side, the lowest first, each as high as what it came
 * to. Measured from zero, so that heights compare; with those before the last
 * change on the same measure.
 */
export function bucketsOf(dots: readonly number[], meets: readonly boolean[], before: readonly number[], { step, gap, height }: Size): Buckets {
  const all = [0, ...dots, ...before]
  const top = Math.max(...all)
  const bottom = Math.min(...all)
  const scale = top > bottom ? height / (top - bottom) : 0
  const y = (value: number): number => round((top - value) * scale)
  const ground = y(0)
  const buckets = dots.map((value, i) => ({
    x: i * step,
    y: Math.min(y(value), ground),
    height: round(Math.abs(y(value) - ground)),
    meets: meets[i],
  }))
  const steps = before.map((value, i) => `${i === 0 ? 'M' : 'V'}${i === 0 ? `0 ${y(value)}` : y(value)}H${(i + 1) * step - (i === before.length - 1 ? gap : 0)}`)
  return { buckets, width: dots.length * step - gap, ground, before: steps.join('') }
}

/** How many of the twenty meet the goal, in words; empty without a goal. */
export function meetWords(meets: readonly boolean[]): string {
  if (meets.length === 0) return ''
  return `${meets.filter(Boolean).length} of ${meets.length} seasons meet the goal`
}

function round(pixels: number): number {
  return Math.round(pixels * 100) / 100
}
