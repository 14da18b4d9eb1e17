import type { Caution, Diagnostic, LineView, Reckoning, RowView, View } from '../door/protocol.ts'

/** What is to be said beside each line, row or cell, by id. */
export interface Beside {
  diagnostics: ReadonlyMap<string, readonly Diagnostic[]>
  cautions: ReadonlyMap<string, readonly Caution[]>
  /** Diagnostics of the whole file, or about an id that the sheet does not show. */
  atTop: readonly Diagnostic[]
  /** Cautions that belong to no line of the sheet. */
  general: readonly Caution[]
}

/**
 * Sorts everything that was found wrong and every caution to the place it is
 * shown at: with the sheet, with a change that was refused, and with the run.
 * The sheet's own cautions stand even before anything is reckoned; then the
 * reckoner says which rows' are called for. One that is said twice about a
 * place is shown once, with the source of the line where it names none itself.
 */
export function putBeside(view: View, refused: readonly Diagnostic[], reckoning: Reckoning | undefined): Beside {
  const places = placesOf(view)
  const diagnostics = new Map<string, Diagnostic[]>()
  const cautions = new Map<string, Caution[]>()
  const atTop: Diagnostic[] = []
  const general: Caution[] = []
  for (const found of [...view.diagnostics, ...refused, ...(reckoning?.warnings ?? [])]) {
    const about = found.about ?? ''
    const list = places.has(about) ? listAt(diagnostics, about) : atTop
    if (!list.some((d) => sameDiagnostic(d, found))) list.push(found)
  }
  const own = ownCautions(view)
  const called = reckoning === undefined ? own : [...reckoning.cautions, ...own.filter((c) => !c.ofRow)]
  for (const caution of called.map((c) => withSource(c, own))) {
    const list = places.has(caution.about) ? listAt(cautions, caution.about) : general
    if (!list.some((c) => c.text === caution.text)) list.push(caution)
  }
  return { diagnostics, cautions, atTop, general }
}

function placesOf(view: View): Set<string> {
  const ids = new Set<string>()
  for (const chapter of view.chapters) {
    for (const line of chapter.lines) ids.add(line.id)
    for (const table of chapter.tables) {
      for (const row of table.rows) {
        ids.add(`${table.id}.${row.id}`)
        for (const cell of row.cells) ids.add(cell.id)
      }
    }
  }
  return ids
}

interface OwnCaution extends Caution {
  ofRow: boolean
}

function withSource({ about, text, source }: Caution, own: readonly OwnCaution[]): Caution {
  return { about, text, source: source || (own.find((c) => c.about === about && c.text === text)?.source ?? '') }
}

function ownCautions(view: View): OwnCaution[] {
  const said = (about: string, from: LineView | RowView, ofRow = false): OwnCaution[] =>
    from.caution ? [{ about, text: from.caution, source: from.source ?? '', ofRow }] : []
  return view.chapters.flatMap((chapter) => [
    ...chapter.lines.flatMap((line) => said(line.id, line)),
    ...chapter.tables.flatMap((table) =>
      table.rows.flatMap((row) => [
        ...said(`${table.id}.${row.id}`, row, true),
        ...row.cells.flatMap((cell) => said(cell.id, cell)),
      ]),
    ),
  ])
}

function sameDiagnostic(a: Diagnostic, b: Diagnostic): boolean {
  return a.code === b.code && a.message === b.message && a.place.formula?.from === b.place.formula?.from
}

function listAt<T>(map: Map<string, T[]>, key: string): T[] {
  const list = map.get(key) ?? []
  map.set(key, list)
  return list
}
