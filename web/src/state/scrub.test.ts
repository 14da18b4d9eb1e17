import { describe, expect, it } from 'vitest'
import { moved, stepOf } from './scrub.ts'

describe('stepOf', () => {
  it('is about a hundredth of a number, and whole for whole ones', () => {
    const steps = ([140, 9.2, 9, 12, 12.5, 0.0375, 12000, -62, 1, 0] as const).map(stepOf)
    expect(steps.map((s) => Number(s.toPrecision(6)))).toEqual([1, 0.01, 0.01, 1, 0.1, 0.0001, 100, 1, 0.01, 1])
  })
})

describe('moved', () => {
  it('goes by steps without stray digits', () => {
    expect(moved(9.2, 3, 0.01, {})).toBe(9.23)
    expect(moved(0.1, 2, 0.1, {})).toBe(0.3)
    expect(moved(140, -5, 1, {})).toBe(135)
    expect(moved(0.0375, 1, 0.0001, {})).toBe(0.0376)
  })

  it('stays within its limits', () => {
    expect(moved(1, -500, 0.01, { low: 0 })).toBe(0)
    expect(moved(9.2, 500, 0.01, { high: 13.8 })).toBe(13.8)
  })
})
