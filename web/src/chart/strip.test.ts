import { describe, expect, it } from 'vitest'
import { stripOf, stripText } from './strip.ts'

const scale = { low: 0, high: 100, width: 200 }

describe('stripOf', () => {
  it('scales each percentile to pixels', () => {
    expect(stripOf({ p05: 5, p10: 10, p50: 40, p90: 80, p95: 90 }, scale)).toEqual({
      zero: 0,
      tails: { from: 10, to: 180 },
      range: { from: 20, to: 160 },
      middle: 80,
      certain: false,
    })
  })

  it('says when the range is too narrow to be seen', () => {
    expect(stripOf({ p05: 40, p10: 40, p50: 40, p90: 40, p95: 40 }, scale)?.certain).toBe(true)
    expect(stripOf({ p05: 40, p10: 40, p50: 40.2, p90: 40.5, p95: 41 }, scale)?.certain).toBe(true)
  })

  it('draws no tails beyond the range when there are none', () => {
    expect(stripOf({ p05: null, p10: 10, p50: 40, p90: 80, p95: null }, scale)?.tails).toEqual({ from: 20, to: 160 })
  })

  it('draws nothing of nothing', () => {
    expect(stripOf({ p05: null, p10: null, p50: null, p90: null, p95: null }, scale)).toBeUndefined()
  })
})

describe('stripText', () => {
  const shown = { likely: '27 gal', low: '19 gal', middle: '28 gal', high: '39 gal', mean: '28.5 gal', goal: '' }

  it('says the same in words', () => {
    expect(stripText(shown)).toBe('8 seasons of 10 fall between 19 gal and 39 gal; middle 28 gal')
  })

  it('says one number when there is one', () => {
    expect(stripText({ ...shown, low: '140 taps', middle: '140 taps', high: '140 taps' })).toBe('140 taps in 8 seasons of 10')
  })
})
