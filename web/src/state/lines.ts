import type { Kind, LineView, View } from '../door/protocol.ts'

/** A line or cell as it is picked from a list. */
export interface Pick {
  id: string
  label: string
  kind: Kind
  unit: string
  /** The chapter or table it stands in. */
  group: string
}

/** Every line and cell of a sheet in the order it stands, cells called by row and column. */
export function linesOf(view: View): Pick[] {
  const pick = (line: LineView, label: string, group: string): Pick => ({ id: line.id, label, kind: line.kind, unit: line.unit, group })
  return view.chapters.flatMap((chapter) => [
    ...chapter.lines.map((line) => pick(line, line.label, chapter.title)),
    ...chapter.tables.flatMap((table) =>
      table.rows.flatMap((row) => row.cells.map((cell, c) => pick(cell, `${row.label}: ${(table.columns[c]?.label ?? cell.label).toLowerCase()}`, table.label))),
    ),
  ])
}

/** Picks by their group, in the order of each group's first. */
export function grouped(picks: readonly Pick[]): [string, Pick[]][] {
  const groups = new Map<string, Pick[]>()
  for (const pick of picks) groups.set(pick.group, [...(groups.get(pick.group) ?? []), pick])
  return [...groups]
}
