/**
 * What crosses the reckoner's door, as JSON. Keys are the engine's own; absent
 * keys are optional here. Numbers stay in the unit their line was written in.
 */

export type Kind = 'is' | 'guess' | 'records' | 'choose' | 'formula'
export type System = 'as-written' | 'customary' | 'metric'

/** A stretch of a formula in code points from 0; `to` is one past the last. */
export interface Span {
  from: number
  to: number
}

export interface Place {
  file?: string
  line?: number
  column?: number
  formula?: Span
}

export interface Diagnostic {
  code: string
  severity: 'error' | 'warning'
  /** Id of the line or cell; absent when the whole file is meant. */
  about?: string
  place: Place
  message: string
  hint?: string
  /** In how many of `of` drawn seasons a run's warning was seen. */
  seasons?: number
  of?: number
}

export interface Guess {
  low: number
  likely: number
  high: number
}

export interface Named {
  id: string
  label: string
}

export interface LineView {
  id: string
  label: string
  kind: Kind
  unit: string
  is?: number
  guess?: Guess
  shape?: string
  floor?: number
  ceiling?: number
  records?: number[]
  choose?: string
  among?: Named[]
  formula?: string
  note?: string
  source?: string
  caution?: string
  headline?: boolean
  better?: 'more' | 'less' | ''
  goal?: { at_least?: number; at_most?: number }
  /** The scenario itself set or added the line. */
  changed?: boolean
  /** The line cannot be reckoned; a diagnostic tells why. */
  broken?: boolean
}

export interface ColumnView {
  id: string
  label: string
  unit: string
  formula?: string
  note?: string
}

export interface RowView {
  id: string
  label: string
  note?: string
  source?: string
  caution?: string
  /** In column order; each id is table.row.column. */
  cells: LineView[]
}

export interface TableView {
  id: string
  label: string
  note?: string
  columns: ColumnView[]
  rows: RowView[]
}

export interface ChapterView {
  title: string
  note?: string
  lines: LineView[]
  tables: TableView[]
}

export interface View {
  name: string
  title: string
  about?: string
  money: string
  seasons: number
  seed: number
  from?: string
  chapters: ChapterView[]
  diagnostics: Diagnostic[]
  /** The sheet file's text as it now stands. */
  source: string
  /** What was asked could not be done: the sheet is as it was, and the diagnostics tell why. */
  kept?: boolean
}

/** Numbers as a person reads them, with their unit, in the system asked for. */
export interface Shown {
  likely: string
  low: string
  middle: string
  high: string
  mean: string
  goal?: string
}

export interface Answer {
  id: string
  label: string
  chapter: string
  unit: string
  kind: Kind
  at_likely: number | null
  mean: number | null
  p05: number | null
  p10: number | null
  p50: number | null
  p90: number | null
  p95: number | null
  headline: boolean
  better?: 'more' | 'less' | ''
  /** Share of the seasons that met the goal. */
  goal_met: number | null
  goal?: string
  /** Twenty seasons that stand for all, from the lowest; and which of them meet the goal. */
  dots?: number[]
  goal_dots?: boolean[]
  choice?: string
  table?: string
  row?: string
  column?: string
  shown: Shown
}

export interface Caution {
  about: string
  text: string
  source: string
}

export interface Reckoning {
  title: string
  seasons: number
  seed: number
  lines: Answer[]
  warnings: Diagnostic[]
  cautions: Caution[]
  paragraph: string
  /** How many lines were worked again for this reckoning. */
  worked?: number
  /** Lines are only those that differ from what was told last. */
  changed?: boolean
}

/** One defined function of the formula language. */
export interface DefinedFunction {
  name: string
  family: string
  summary: string
  example: string
  result: string
  source?: string
  args: { name: string; unit: string; summary: string }[]
}

export interface EditSet {
  is?: number
  guess?: Guess
  records?: number[]
  choose?: string
  formula?: string
  unit?: string
  label?: string
  note?: string
  source?: string
  floor?: number
  ceiling?: number
}

/** A change asked of the sheet: what it is about, and its new content. At most one of the rest is given. */
export interface Edit {
  about: string
  set: EditSet
  /** Takes back what a scenario says of it, so that it follows the sheet it is taken from. */
  restore?: boolean
  /** Makes about a new line, or a new row of a table. */
  add?: { chapter?: string; after?: string }
  remove?: boolean
  /** Another id; whatever names the line follows. */
  rename?: string
  /** Places down its list, or another chapter. */
  move?: { by?: number; chapter?: string }
  /** The id of a copy. */
  duplicate?: string
}

/** What trying a change came to. */
export interface Trial {
  kept?: boolean
  diagnostics: Diagnostic[]
}

/** What a guess in the making would do. */
export interface GuessShape {
  /** What the sheet would hold; absent when no shape can carry the numbers. */
  guess?: Guess
  /** The density to draw; the highest is 1. */
  curve: { at: number; height: number }[]
  says: string
  message?: string
  hint?: string
  nearest?: Guess
}

/** What the door answers in place of a result. */
export interface Refusal {
  code: string
  message: string
  hint?: string
}

export interface Files {
  [name: string]: string
}

export interface OpenPayload {
  name: string
  files: Files
}
