import { describe, expect, it } from 'vitest'
import type { Amount, PriceCard, PricedSize } from '../door/prices.ts'
import type { LineView, View } from '../door/protocol.ts'
import { editsOf, slideOfPrice, triesOf } from './tries.ts'

const cell = (id: string, rest: Partial<LineView>): LineView => ({ id, label: id, kind: 'is', unit: '$/jar', ...rest })
const view: View = {
  name: 's', title: 'S', money: 'USD', seasons: 10, seed: 1, diagnostics: [], source: '',
  chapters: [{ title: 'Jars', lines: [], tables: [{ id: 'jars', label: 'Jars', columns: [], rows: [
    { id: 'pint', label: 'Pint', cells: [cell('jars.pint.price', { kind: 'guess', guess: { low: 10, likely: 14, high: 18 } }), cell('jars.pint.share', { is: 30, unit: '%' })] },
    { id: 'quart', label: 'Quart', cells: [cell('jars.quart.price', { is: 24 }), cell('jars.quart.share', { kind: 'formula', formula: '1', unit: '%' })] },
  ] }] }],
}
const amount: Amount = { unit: '', at_likely: 1, p10: 1, p50: 1, p90: 1, shown: { likely: '', mean: '', low: '', middle: '', high: '' } }
const size = (id: string, label: string): PricedSize => ({ id, label, price_id: `jars.${id}.price`, size: amount, filled: amount, price: amount, brings: amount, selling: null, parts: null, syrup: null, left: amount, left_by_hour: null })
const card: PriceCard = { money: 'USD', table: 'jars', label: '', sizes: [size('pint', 'Pint'), size('quart', 'Quart')], ladder: null, season: null, outlets: null, sales_note: '', change: null, wage: null, reference: null, not_counted: null, warnings: null }

describe('triesOf', () => {
  it('has each price, and each share that is not worked out from the others', () => {
    const tries = triesOf(card, view)
    expect(tries.map(({ about, now }) => [about, now])).toEqual([['jars.pint.price', 14], ['jars.quart.price', 24], ['jars.pint.share', 30]])
    expect(tries[2]?.slide).toEqual({ low: 0, high: 100, step: 1 })
  })
})

describe('editsOf', () => {
  it('changes only what was moved from where the sheet has it', () => {
    const tries = triesOf(card, view)
    expect(editsOf(tries, new Map([['jars.pint.price', 16], ['jars.quart.price', 24]]))).toEqual([{ about: 'jars.pint.price', set: { is: 16 } }])
  })
})

describe('slideOfPrice', () => {
  it('goes from half to double by steps of a price tag', () => {
    expect(slideOfPrice(14)).toEqual({ low: 7, high: 28, step: 0.25 })
    expect(slideOfPrice(62)).toEqual({ low: 31, high: 124, step: 1 })
    expect(slideOfPrice(0)).toEqual({ low: 0, high: 0.05, step: 0.05 })
  })
})
