import { describe, expect, it } from 'vitest'
import type { LineView, View } from '../door/protocol.ts'
import { grouped, linesOf } from './lines.ts'

const line = (id: string): LineView => ({ id, label: `Line ${id}`, kind: 'is', unit: '1', is: 1 })
const view: View = {
  name: 's', title: 'S', money: 'USD', seasons: 10, seed: 1, diagnostics: [], source: '',
  chapters: [
    { title: 'One', lines: [line('a')], tables: [{ id: 't', label: 'Table', columns: [{ id: 'price', label: 'Price of one', unit: '$' }], rows: [{ id: 'r', label: 'Row', cells: [line('t.r.price')] }] }] },
    { title: 'Two', lines: [line('b')], tables: [] },
  ],
}

describe('linesOf', () => {
  it('has lines and cells in order, cells called by row and column', () => {
    expect(linesOf(view).map(({ id, label, group }) => [id, label, group])).toEqual([
      ['a', 'Line a', 'One'], ['t.r.price', 'Row: price of one', 'Table'], ['b', 'Line b', 'Two'],
    ])
  })
})

describe('grouped', () => {
  it('puts each under its group, in the order of the first of each', () => {
    const [a, cell, b] = linesOf(view)
    if (a === undefined || cell === undefined || b === undefined) throw new Error('three lines were set down')
    expect(grouped([b, a, cell, a]).map(([group, picks]) => [group, picks.length])).toEqual([['Two', 1], ['One', 2], ['Table', 1]])
  })
})
