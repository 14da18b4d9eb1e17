import { describe, expect, it } from 'vitest'
import type { Amount, PricedSize, Rung } from '../door/prices.ts'
import { jarPicture, keyOf, partsOf } from './jar.ts'
import { ladderPicture, stepsOf } from './ladder.ts'

const amount = (value: number | null): Amount => ({
  unit: '$/jar', at_likely: value, p10: value === null ? null : value - 1, p50: value, p90: value === null ? null : value + 1,
  shown: { likely: `$${value}`, mean: '', low: '', middle: `$${value}`, high: '' },
})
const rung = (id: string, value: number | null, falls = false): Rung => ({ id, label: id, by_volume: amount(value), falls, shown: { against: '1' } })
const size = (id: string, syrup: Amount | null): PricedSize => ({
  id, label: id, price_id: `jars.${id}.price`, size: amount(1), filled: amount(1), price: amount(9), brings: amount(8), selling: amount(1),
  parts: [{ ...amount(2), id: 'empty', label: 'The empty jar' }], syrup, left: amount(-3), left_by_hour: null,
})

describe('the ladder', () => {
  it('has a step for each size with a price, and says which falls', () => {
    expect(stepsOf([rung('gallon', 5), rung('tin', null), rung('pint', 4, true)])).toEqual([
      { key: 'gallon', label: 'gallon', low: 4, middle: 5, high: 6, shown: '$5', falls: false },
      { key: 'pint', label: 'pint', low: 3, middle: 4, high: 5, shown: '$4, lower than the size above', falls: true },
    ])
  })

  it('stands with the largest at the top', () => {
    expect(ladderPicture([rung('gallon', 5), rung('pint', 6)], 600).y?.domain).toEqual(['gallon', 'pint'])
  })
})

describe('the money of a jar', () => {
  it('is cut into its parts in order, what is not known left out', () => {
    expect(partsOf([size('pint', amount(5)), size('quart', null)]).map(({ key, part, value }) => [key, part, value])).toEqual([
      ['pint', 'selling it', 1], ['pint', 'the empty jar', 2], ['pint', 'the syrup in it', 5], ['pint', 'left for the hours', -3],
      ['quart', 'selling it', 1], ['quart', 'the empty jar', 2], ['quart', 'left for the hours', -3],
    ])
  })

  it('gives every part a colour of its own', () => {
    const tones = keyOf(partsOf([size('pint', amount(5))])).map(({ tone }) => tone)
    expect(new Set(tones).size).toBe(4)
    expect(jarPicture([size('pint', amount(5))], 300).y?.domain).toEqual(['pint'])
  })
})
