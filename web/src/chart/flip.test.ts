import { describe, expect, it } from 'vitest'
import type { Flip, FlipPoint } from '../door/answers.ts'
import { bandOf, flipPicture, presentIn } from './flip.ts'
import { fitted, heightOf } from './rows.ts'

const point = (value: number, p50: number | null): FlipPoint => ({ value, p10: p50 === null ? null : p50 - 1, p50, p90: p50 === null ? null : p50 + 1, shown: { value: '', middle: '', ahead: '' } })
const flip: Flip = {
  about: 'worth', label: 'Worth', unit: '$/h', outcome_label: 'Left', outcome_unit: '$', first: 'a', second: 'b', low: 0, high: 10, now: 12,
  flips: [{ at: 4, shown: '$4/h' }], curve: [point(0, -1), point(5, null), point(10, 3)], sentence: '', shown: { low: '', high: '', now: '' },
}

describe('the flip', () => {
  it('leaves out where no season comes to a number', () => {
    expect(bandOf(flip).map(({ value }) => value)).toEqual([0, 10])
    expect(bandOf({ ...flip, curve: null })).toEqual([])
  })

  it('marks the present only where it is in the picture', () => {
    expect(presentIn({ ...flip, now: 5 })).toEqual([{ at: 5, shown: 'now' }])
    for (const now of [12, -1, null]) expect(presentIn({ ...flip, now })).toEqual([])
  })

  it('is lower on a narrow page', () => {
    expect(Number(flipPicture(flip, 300).height)).toBeLessThan(Number(flipPicture(flip, 900).height))
  })
})

describe('rows', () => {
  it('cut a label that would run out of the picture', () => {
    expect(fitted('Old hardwood pallets, sap a square foot takes', 160)).toBe('Old hardwood pallets, sa…')
    expect(fitted('Short', 160)).toBe('Short')
  })

  it('stand below each other', () => {
    const row = { key: 'a', label: 'a' }
    expect(heightOf([row, row]) - heightOf([row])).toBe(heightOf([row, row, row]) - heightOf([row, row]))
  })
})
