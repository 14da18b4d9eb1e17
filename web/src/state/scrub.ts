/** What a dragged number keeps to. */
export interface Limits {
  low?: number | undefined
  high?: number | undefined
}

/**
 * The step a number is dragged by: one in the third figure that counts, so
 * that a pixel moves any number by about as much of itself; whole steps for
 * whole numbers of ten and more.
 */
export function stepOf(value: number): number {
  if (value === 0) return 1
  const size = 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2)
  return Number.isInteger(value) && Math.abs(value) >= 10 ? Math.max(size, 1) : size
}

/** The number so many steps away, with no more digits than the steps have, kept within its limits. */
export function moved(value: number, steps: number, step: number, { low = -Infinity, high = Infinity }: Limits): number {
  const digits = Math.max(0, -Math.floor(Math.log10(step)))
  const to = Number((value + steps * step).toFixed(Math.min(digits, 20)))
  return Math.min(Math.max(to, low), high)
}
