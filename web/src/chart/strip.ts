import type { Shown } from '../door/protocol.ts'
import { place, type Scale, type Spread } from './scale.ts'

/** A strip's parts in pixels from its left edge. */
export interface Strip {
  /** Where zero stands. */
  zero: number
  /** The thin line, 9 seasons of 10. */
  tails: { from: number; to: number }
  /** The thick line, 8 seasons of 10. */
  range: { from: number; to: number }
  middle: number
  /** The range is narrower than could be seen: the value hardly varies. */
  certain: boolean
}

const visible = 1.5

/** The strip of one answer on a scale, or undefined when the answer has no numbers. */
export function stripOf(spread: Spread, scale: Scale): Strip | undefined {
  const { p10, p50, p90 } = spread
  if (p10 === null || p50 === null || p90 === null) return undefined
  const at = (value: number): number => place(scale, value)
  return {
    zero: at(0),
    tails: { from: at(spread.p05 ?? p10), to: at(spread.p95 ?? p90) },
    range: { from: at(p10), to: at(p90) },
    middle: at(p50),
    certain: at(p90) - at(p10) < visible,
  }
}

/** A strip in words: the same numbers, as the reckoner shows them. */
export function stripText(shown: Pick<Shown, 'low' | 'middle' | 'high'>): string {
  if (shown.low === shown.high) return `${shown.middle} in 8 seasons of 10`
  return `8 seasons of 10 fall between ${shown.low} and ${shown.high}; middle ${shown.middle}`
}
