/** How full each of ten buckets is, from 0 to 1, for a share of the seasons. */
export function bucketsFor(share: number): number[] {
  return Array.from({ length: 10 }, (_, i) => Math.min(Math.max(share * 10 - i, 0), 1))
}
