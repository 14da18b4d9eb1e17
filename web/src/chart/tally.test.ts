import { describe, expect, it } from 'vitest'
import { bucketsFor } from './tally.ts'

const rounded = (share: number): number[] => bucketsFor(share).map((full) => Math.round(full * 1000) / 1000)

describe('bucketsFor', () => {
  it('fills whole buckets and one in part', () => {
    expect(rounded(0.73)).toEqual([1, 1, 1, 1, 1, 1, 1, 0.3, 0, 0])
  })

  it('fills none and all', () => {
    expect(rounded(0)).toEqual(Array(10).fill(0))
    expect(rounded(1)).toEqual(Array(10).fill(1))
  })
})
