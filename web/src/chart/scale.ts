/** A straight scale from values to pixels. */
export interface Scale {
  low: number
  high: number
  width: number
}

/** What a strip is drawn from: percentiles of one answer; null when nothing finite came out. */
export interface Spread {
  p05: number | null
  p10: number | null
  p50: number | null
  p90: number | null
  p95: number | null
}

/**
 * The scale that holds every spread and zero, so that a strip's length against
 * its distance from zero shows how wide the range is for what it measures.
 * Undefined when there is nothing finite to draw.
 */
export function scaleFor(spreads: readonly Spread[], width: number): Scale | undefined {
  const ends = spreads.flatMap((s) => [s.p05 ?? s.p10 ?? s.p50, s.p95 ?? s.p90 ?? s.p50]).filter((v) => v !== null)
  if (ends.length === 0) return undefined
  const low = Math.min(0, ...ends)
  const high = Math.max(0, ...ends)
  return high > low ? { low, high, width } : { low: 0, high: 1, width }
}

/** Where a value falls on the scale, in pixels from its left edge. */
export function place(scale: Scale, value: number): number {
  return ((value - scale.low) / (scale.high - scale.low)) * scale.width
}
