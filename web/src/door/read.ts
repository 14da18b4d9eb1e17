import type { ChapterView, Diagnostic, Reckoning, Refusal, RowView, TableView, Trial, View } from './protocol.ts'

/** The door's JSON as far as it can be trusted before it has been looked at: Go writes an empty list as null. */
type Loose<T> = { [K in keyof T]: T[K] extends readonly unknown[] ? T[K] | null : T[K] }

/** A refusal said by the door, as an error that callers may tell from a death. */
export class Refused extends Error {
  readonly code: string
  readonly hint: string
  constructor(refusal: Refusal) {
    super(refusal.message)
    this.name = 'Refused'
    this.code = refusal.code
    this.hint = refusal.hint ?? ''
  }
}

/** Parses an answer of the door. Throws Refused when it is a refusal, SyntaxError when it is no JSON. */
export function readAnswer<T>(json: string): T {
  const said = JSON.parse(json) as T | { error: Refusal }
  if (typeof said === 'object' && said !== null && 'error' in said && said.error) throw new Refused(said.error)
  return said as T
}

/** A view with every list present. */
export function readView(json: string): View {
  const view = readAnswer<Loose<View>>(json)
  return {
    ...view,
    chapters: (view.chapters ?? []).map(readChapter),
    diagnostics: readDiagnostics(view.diagnostics),
  }
}

/** A reckoning with every list present. */
export function readReckoning(json: string): Reckoning {
  const said = readAnswer<Loose<Reckoning>>(json)
  return {
    ...said,
    lines: said.lines ?? [],
    warnings: readDiagnostics(said.warnings),
    cautions: said.cautions ?? [],
  }
}

/** What trying came to, with its list present. */
export function readTrial(json: string): Trial {
  const trial = readAnswer<Loose<Trial>>(json)
  return { ...trial, diagnostics: readDiagnostics(trial.diagnostics) }
}

/** A reckoning in whole: lines that were not told again are as they were told before. */
export function layOver(told: Reckoning, now: Reckoning): Reckoning {
  if (!now.changed) return now
  const fresh = new Map(now.lines.map((answer) => [answer.id, answer]))
  return { ...now, lines: told.lines.map((answer) => fresh.get(answer.id) ?? answer) }
}

function readChapter(chapter: Loose<ChapterView>): ChapterView {
  return { ...chapter, lines: chapter.lines ?? [], tables: (chapter.tables ?? []).map(readTable) }
}

function readTable(table: Loose<TableView>): TableView {
  return { ...table, columns: table.columns ?? [], rows: (table.rows ?? []).map(readRow) }
}

function readRow(row: Loose<RowView>): RowView {
  return { ...row, cells: row.cells ?? [] }
}

function readDiagnostics(list: Diagnostic[] | null): Diagnostic[] {
  return (list ?? []).map((d) => ({ ...d, place: d.place ?? {} }))
}
