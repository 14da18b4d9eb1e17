import { describe, expect, it } from 'vitest'
import type { Diagnostic, LineView, Reckoning, View } from '../door/protocol.ts'
import { putBeside } from './beside.ts'

const line = (id: string, more: Partial<LineView> = {}): LineView => ({ id, label: id, kind: 'is', unit: 'gal', is: 1, ...more })
const wrong = (about: string | undefined, message: string, from?: number): Diagnostic => ({
  code: 'unit-mismatch',
  severity: 'error',
  ...(about === undefined ? {} : { about }),
  place: from === undefined ? {} : { formula: { from, to: from + 1 } },
  message,
})

function view(diagnostics: Diagnostic[]): View {
  return {
    title: 'T', name: 'a.yaml', about: '', money: 'USD', seasons: 10, seed: 1, source: '', diagnostics,
    chapters: [
      {
        title: 'C',
        lines: [line('sap'), line('draw_off', { caution: 'hot', source: 'a nurse' })],
        tables: [
          {
            id: 'fuels', label: 'Fuels', columns: [{ id: 'price', label: 'Price', unit: '$' }],
            rows: [{ id: 'pallets', label: 'Pallets', caution: 'never marked MB', cells: [line('fuels.pallets.price', { caution: 'none' })] }],
          },
        ],
      },
    ],
  }
}

const reckoning = (more: Partial<Reckoning>): Reckoning => ({
  title: 'T', seasons: 10, seed: 1, lines: [], warnings: [], cautions: [], paragraph: '', ...more,
})

describe('putBeside', () => {
  it('puts each diagnostic at its line or cell, the rest at the top', () => {
    const beside = putBeside(view([wrong('sap', 'a'), wrong('fuels.pallets.price', 'b'), wrong(undefined, 'c'), wrong('gone', 'd')]), [], undefined)
    expect(beside.diagnostics.get('sap')?.map((d) => d.message)).toEqual(['a'])
    expect(beside.diagnostics.get('fuels.pallets.price')?.map((d) => d.message)).toEqual(['b'])
    expect(beside.atTop.map((d) => d.message)).toEqual(['c', 'd'])
  })

  it('puts a run’s warnings with the sheet’s diagnostics, each once', () => {
    const beside = putBeside(view([wrong('sap', 'a', 3)]), [], reckoning({ warnings: [wrong('sap', 'a', 3), wrong('sap', 'a', 9), wrong('sap', 'b', 3)] }))
    expect(beside.diagnostics.get('sap')?.map((d) => [d.message, d.place.formula?.from])).toEqual([['a', 3], ['a', 9], ['b', 3]])
  })

  it('puts beside its line what was wrong with a change that was refused', () => {
    const beside = putBeside(view([wrong('sap', 'a')]), [wrong('sap', 'refused')], undefined)
    expect(beside.diagnostics.get('sap')?.map((d) => d.message)).toEqual(['a', 'refused'])
  })

  it('shows the sheet’s own cautions before anything is reckoned', () => {
    const beside = putBeside(view([]), [], undefined)
    expect([...beside.cautions.keys()]).toEqual(['draw_off', 'fuels.pallets', 'fuels.pallets.price'])
  })

  it('names the line’s source with a caution that has none of its own', () => {
    const said = (source: string) => putBeside(view([]), [], reckoning({ cautions: [{ about: 'draw_off', text: 'hot', source }] }))
    expect(said('').cautions.get('draw_off')).toEqual([{ about: 'draw_off', text: 'hot', source: 'a nurse' }])
    expect(said('tables').cautions.get('draw_off')).toEqual([{ about: 'draw_off', text: 'hot', source: 'tables' }])
  })

  it('takes the reckoner’s word, with its source, and its judgement of which rows’ are called for', () => {
    const beside = putBeside(
      view([]),
      [],
      reckoning({ cautions: [{ about: 'draw_off', text: 'hot', source: 'tables' }, { about: '', text: 'labels differ by place', source: 'codes' }] }),
    )
    expect(beside.cautions.get('draw_off')).toEqual([{ about: 'draw_off', text: 'hot', source: 'tables' }])
    expect([...beside.cautions.keys()]).toEqual(['draw_off', 'fuels.pallets.price'])
    expect(beside.general.map((c) => c.text)).toEqual(['labels differ by place'])
  })
})
