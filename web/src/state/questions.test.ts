import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { blank, editsFor, fuels, madeFrom, untitled, withOwnHead, wrongWith } from './questions.ts'

const text = readFileSync(new URL(`../../../scenarios/${madeFrom}`, import.meta.url), 'utf8')

interface Sheet {
  chapters: { lines?: { id: string }[]; tables?: { id: string; columns: { id: string }[]; rows: { id: string; label: string }[] }[] }[]
}
const sheet = parse(text) as Sheet
const tables = sheet.chapters.flatMap((c) => c.tables ?? [])
const ids = new Set([
  '',
  ...sheet.chapters.flatMap((c) => (c.lines ?? []).map((l) => l.id)),
  ...tables.flatMap((t) => t.rows.flatMap((r) => [`${t.id}.${r.id}`, ...t.columns.map((c) => `${t.id}.${r.id}.${c.id}`)])),
])

const full = { ...blank, title: 'Creek side', taps: '60', gather: 'tubing', length: '36', width: '24', measure: 'in', fuel: 'propane', days: '8', evenings: '5', fill: 'jugs', price: '25', worth: '18' } as const

describe('the questions', () => {
  it('offer the fuels that the example has', () => {
    const rows = tables.find((t) => t.id === 'fuels')?.rows.map(({ id, label }) => ({ id, label }))
    expect(rows).toEqual(fuels)
  })

  it('change only what the example has', () => {
    expect(editsFor(full).map((e) => e.about).filter((about) => !ids.has(about))).toEqual([])
  })

  it('leave what was not answered', () => {
    expect(editsFor(blank)).toEqual([
      { about: '', set: { title: untitled, about: 'A first plan on buckets, the pan, old hardwood pallets. What was not asked stands as at Heron Ridge.' } },
      { about: 'fuel', set: { choose: 'pallets' } },
    ])
  })

  it('put each answer where it belongs', () => {
    const edits = new Map(editsFor(full).map((e) => [e.about, e.set]))
    expect(edits.get('')).toEqual({ title: 'Creek side', about: '60 taps on tubing, a 24 by 36 in pan, propane by the gallon. What was not asked stands as at Heron Ridge.' })
    expect(edits.get('taps')).toMatchObject({ is: 60 })
    expect(edits.get('pan_length')).toMatchObject({ is: 36, unit: 'in' })
    expect(edits.get('pan_width')).toMatchObject({ is: 24, unit: 'in' })
    expect(edits.get('fuel')).toEqual({ choose: 'propane' })
    expect(edits.get('weekend_days')).toMatchObject({ is: 8 })
    expect(edits.get('evenings')).toMatchObject({ is: 5 })
    expect(edits.get('jars.quart.price')).toMatchObject({ is: 25 })
    expect(edits.get('jars.pint.price')).toEqual({ formula: 'jars.quart.price * 9.8 / 16.5' })
    expect(edits.get('worth')).toMatchObject({ is: 18 })
    expect(edits.get('get_quarts')).toEqual({ label: 'Quart jugs' })
  })
})

describe('wrongWith', () => {
  it.each([
    ['taps', '', undefined],
    ['taps', '1,200', undefined],
    ['taps', 'many', 'wants a number'],
    ['taps', '0', 'wants more than nothing'],
    ['worth', '0', undefined],
    ['days', '-2', 'cannot be less than nothing'],
  ] as const)('of %s with %j', (asked, said, wrong) => expect(wrongWith(asked, said)).toBe(wrong))
})

describe('withOwnHead', () => {
  it('takes the other household’s words from above the sheet and nothing from the sheet', () => {
    const own = withOwnHead(text)
    expect(own).not.toContain('the two of us')
    expect(own.endsWith(text.slice(text.indexOf('\nthawbook: 1')))).toBe(true)
    expect(parse(own)).toEqual(parse(text))
  })
})
