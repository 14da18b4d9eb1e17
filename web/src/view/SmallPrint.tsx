import type { TableView } from '../door/protocol.ts'

/** The notes and sources of a table's cells, out of the way below it: in the cells they would drown the numbers. */
export function SmallPrint({ table }: { table: TableView }) {
  const said = table.rows.flatMap((row) =>
    row.cells.flatMap((cell, c) => {
      const words = [cell.note, cell.source && `From: ${cell.source}`].filter(Boolean).join(' ')
      return words === '' ? [] : [{ id: cell.id, what: `${row.label}: ${table.columns[c]?.label ?? cell.label}`, words }]
    }),
  )
  if (said.length === 0) return null
  return (
    <details class="small-print">
      <summary>Notes and sources for {table.label.toLowerCase()}</summary>
      <dl>
        {said.map(({ id, what, words }) => (
          <div key={id}>
            <dt>{what}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
