// Each workbook is read by one library and worked by another, neither of them
// ours, and must come to what the engine comes to: as it was sent, and after
// hundreds of changes to its inputs and choices.
import { read, type WorkBook } from '@e965/xlsx'
import { HyperFormula, type RawCellContent, type SimpleCellAddress } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { handedOver, type Answers, type Place } from './answers.ts'

const books = handedOver()

describe.each(books)('$name', ({ bytes, answers }) => {
  const book = read(bytes, { cellFormula: true })
  const { engine, at } = build(book)

  it('holds hundreds of cases', () => {
    expect(answers.cases.length).toBeGreaterThan(200)
    expect(answers.worked.length).toBeGreaterThan(10)
  })

  it('carries the computed number of every formula', () => {
    const first = answers.cases[0]!
    answers.worked.forEach((place, k) => {
      const cell = book.Sheets[place.sheet]![place.cell]
      expect(cell.f, place.id).toBeTruthy()
      expect(cell.t, place.id).toBe(first.want[k] === null ? 'e' : 'n')
      if (first.want[k] !== null) close(cell.v, first.want[k]!, place.id)
    })
  })

  it('is worked to the same numbers, before and after every change', () => {
    const sent = answers.inputs.map((place) => engine.getCellValue(at(place)))
    for (const one of answers.cases) {
      engine.batch(() => one.set.forEach(({ at: k, value }) => engine.setCellContents(at(answers.inputs[k]!), literal(value))))
      agree(engine, at, answers, one)
      engine.batch(() => one.set.forEach(({ at: k }) => engine.setCellContents(at(answers.inputs[k]!), literal(sent[k] as number | string))))
    }
  })
})

/** A value as what it is and never as a formula or a date. */
function literal(value: number | string): RawCellContent {
  return typeof value === 'string' ? `'${value}` : value
}

function agree(engine: HyperFormula, at: (p: Place) => SimpleCellAddress, answers: Answers, one: Answers['cases'][number]) {
  const doubtful = new Set(one.doubtful)
  const edge = new Set(one.edge)
  answers.worked.forEach((place, k) => {
    if (edge.has(k)) return
    const got = engine.getCellValue(at(place))
    const want = one.want[k]
    if (want === null || want === undefined) {
      expect(typeof got, place.id).not.toBe('number')
    } else if (typeof got === 'number' || !doubtful.has(k)) {
      close(got, want, `${place.id} after ${JSON.stringify(one.set.slice(0, 3))}`)
    }
  })
}

/** Equal to a part in a thousand million. */
function close(got: unknown, want: number, what: string) {
  expect(typeof got, `${what}: ${JSON.stringify(got)}`).toBe('number')
  const apart = Math.abs((got as number) - want)
  if (apart > 1e-9 * Math.max(Math.abs(want), Math.abs(got as number))) expect(got, what).toBe(want)
}

/** Puts a workbook's cells and names into the formula library. */
function build(book: WorkBook): { engine: HyperFormula; at: (p: Place) => SimpleCellAddress } {
  // Exact numbers: by itself the library takes what differs by little for equal.
  const engine = HyperFormula.buildEmpty({ licenseKey: 'gpl-v3', smartRounding: false, precisionEpsilon: 0, useStats: false })
  for (const name of book.SheetNames) engine.addSheet(name)
  const names = (book.Workbook?.Names ?? []).filter((n) => !n.Name.startsWith('_xlnm'))
  // Names before formulas, since a formula read first would not find them.
  for (const n of names) engine.addNamedExpression(n.Name, '=' + n.Ref)
  for (const name of book.SheetNames) {
    const sheet = book.Sheets[name]!
    const id = engine.getSheetId(name)!
    const rows: RawCellContent[][] = []
    for (const [ref, cell] of Object.entries(sheet)) {
      if (ref.startsWith('!')) continue
      const { row, col } = engine.simpleCellAddressFromString(ref, id)!
      rows[row] ??= []
      rows[row][col] = cell.f ? '=' + cell.f : literal(cell.v)
    }
    engine.setSheetContent(id, Array.from(rows, (row) => Array.from(row ?? [], (value) => value ?? null)))
  }
  const at = (p: Place) => engine.simpleCellAddressFromString(p.cell, engine.getSheetId(p.sheet)!)!
  return { engine, at }
}
