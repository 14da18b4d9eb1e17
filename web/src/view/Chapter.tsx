import type { ChapterView } from '../door/protocol.ts'
import { LinesGrid } from './LinesGrid.tsx'
import { TableGrid } from './TableGrid.tsx'

/** A chapter: its title and note, its lines, then its tables. */
export function Chapter({ chapter, number }: { chapter: ChapterView; number: number }) {
  const id = `chapter-${number}`
  return (
    <section class="chapter" aria-labelledby={id}>
      <h2 id={id}>{chapter.title}</h2>
      {chapter.note && <p class="chapter-note">{chapter.note}</p>}
      {chapter.lines.length > 0 && <LinesGrid lines={chapter.lines} labelledBy={id} />}
      {chapter.tables.map((table) => (
        <TableGrid key={table.id} table={table} />
      ))}
    </section>
  )
}
