import { describe, expect, it } from 'vitest'
import { place, scaleFor, type Spread } from './scale.ts'

const spread = (p05: number | null, p10: number | null, p50: number | null, p90: number | null, p95: number | null): Spread => ({ p05, p10, p50, p90, p95 })

describe('scaleFor', () => {
  it('reaches from zero to the furthest tail of all', () => {
    expect(scaleFor([spread(10, 12, 20, 30, 34), spread(5, 6, 7, 8, 9)], 100)).toEqual({ low: 0, high: 34, width: 100 })
  })

  it('holds losses and gains', () => {
    expect(scaleFor([spread(-40, -30, 5, 60, 80)], 100)).toEqual({ low: -40, high: 80, width: 100 })
  })

  it('makes do with what there is', () => {
    expect(scaleFor([spread(null, null, 7, null, null), spread(null, null, null, null, null)], 100)).toEqual({ low: 0, high: 7, width: 100 })
    expect(scaleFor([spread(null, null, null, null, null)], 100)).toBeUndefined()
    expect(scaleFor([], 100)).toBeUndefined()
  })

  it('does not collapse when everything is zero', () => {
    const scale = scaleFor([spread(0, 0, 0, 0, 0)], 100)
    expect(scale && place(scale, 0)).toBe(0)
  })
})

describe('place', () => {
  it('is a straight line from edge to edge', () => {
    const scale = { low: -50, high: 150, width: 200 }
    expect([-50, 0, 150].map((v) => place(scale, v))).toEqual([0, 50, 200])
  })
})
