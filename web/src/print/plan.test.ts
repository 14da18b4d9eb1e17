import { describe, expect, it } from 'vitest'
import type { Answer, LineView, Reckoning, TableView, View } from '../door/protocol.ts'
import { planOf } from './plan.ts'

const answer = (id: string, middle: string, low = middle, high = middle, more: Partial<Answer> = {}): Answer => ({
  id, label: id, chapter: 'C', unit: '1', kind: 'formula', at_likely: 1, mean: 1, p05: 1, p10: 1, p50: 1, p90: 1, p95: 1,
  headline: false, goal_met: null, shown: { likely: middle, low, middle, high, mean: middle }, ...more,
})

const line = (id: string, more: Partial<LineView> = {}): LineView => ({ id, label: `Line ${id}`, kind: 'formula', unit: '1', ...more })

function table(rows: number, columns: number): TableView {
  const ids = (n: number): number[] => Array.from({ length: n }, (_, i) => i)
  return {
    id: 't', label: 'Things', columns: ids(columns).map((c) => ({ id: `c${c}`, label: `Column ${c}`, unit: '1' })),
    rows: ids(rows).map((r) => ({ id: `r${r}`, label: `Row ${r}`, cells: ids(columns).map((c) => line(`t.r${r}.c${c}`)) })),
  }
}

const view = (lines: LineView[], tables: TableView[] = []): View => ({
  name: 'a', title: 'Ridge', money: 'USD', seasons: 10, seed: 4, diagnostics: [], source: '',
  chapters: [{ title: 'Sap', lines, tables: [] }, { title: 'Only tables', lines: [], tables }],
})

const reckoning = (lines: Answer[], more: Partial<Reckoning> = {}): Reckoning => ({ title: 'Ridge', seasons: 10_000, seed: 4, lines, warnings: [], cautions: [], paragraph: 'A season.', ...more })

describe('planOf', () => {
  it('says a range only where there is one', () => {
    const plan = planOf(view([line('a'), line('b')]), reckoning([answer('a', '3 gal'), answer('b', '4 gal', '2 gal', '7 gal')]))
    expect(plan.chapters).toEqual([
      { title: 'Sap', lines: [{ id: 'a', label: 'Line a', middle: '3 gal', between: '' }, { id: 'b', label: 'Line b', middle: '4 gal', between: '2 gal to 7 gal' }], tables: [] },
      { title: 'Only tables', lines: [], tables: [] },
    ])
    expect(plan.drawn).toBe('10,000 seasons drawn, seed 4')
  })

  it('prints the name of what was chosen, and says of a line that waits that it does', () => {
    const fuel = line('fuel', { kind: 'choose', choose: 'gas', among: [{ id: 'gas', label: 'Propane' }] })
    const plan = planOf(view([fuel, line('lost')]), reckoning([answer('fuel', 'gas')]))
    expect(plan.chapters[0]?.lines.map((l) => l.middle)).toEqual(['Propane', 'not reckoned'])
  })

  it('puts headlines first with their goals, and each caution once', () => {
    const met = answer('syrup', '20 gal', '15 gal', '25 gal', { headline: true, goal_met: 0.6, goal: 'at least 20 gal' })
    met.shown.goal = '6 seasons of 10'
    const caution = { about: 'a', text: 'It burns.', source: 'USDA' }
    const plan = planOf(view([line('a'), line('syrup')]), reckoning([answer('a', '1'), met], { cautions: [caution, { ...caution, about: 'b' }] }))
    expect(plan.headlines.map((h) => [h.line.middle, h.goal])).toEqual([['20 gal', 'at least 20 gal: 6 seasons of 10']])
    expect(plan.chapters[0]?.lines.map((l) => l.id)).toEqual(['a'])
    expect(plan.cautions).toEqual([{ text: 'It burns.', source: 'USDA' }])
  })

  it('turns a table round when it is wide and short', () => {
    const said = (rows: number, columns: number) =>
      planOf(view([], [table(rows, columns)]), reckoning(Array.from({ length: rows * columns }, (_, i) => {
        const [r, c] = [Math.floor(i / columns), i % columns]
        return answer(`t.r${r}.c${c}`, `${r}/${c}`)
      }))).chapters[1]?.tables[0]
    expect(said(2, 3)).toEqual({ label: 'Things', heads: ['Column 0', 'Column 1', 'Column 2'], turned: false, rows: [{ label: 'Row 0', cells: ['0/0', '0/1', '0/2'] }, { label: 'Row 1', cells: ['1/0', '1/1', '1/2'] }] })
    expect(said(2, 6)).toMatchObject({ heads: ['Row 0', 'Row 1'], turned: true })
    expect(said(2, 6)?.rows[5]).toEqual({ label: 'Column 5', cells: ['0/5', '1/5'] })
    expect(said(6, 6)?.heads).toHaveLength(6)
  })
})
