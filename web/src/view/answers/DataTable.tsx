import type { ComponentChildren } from 'preact'

interface Props {
  caption: string
  head: readonly string[]
  /** The first cell of each row is its header. */
  rows: readonly { key: string; cells: readonly ComponentChildren[] }[]
  /** Whether the caption is for screen readers only, because a heading says the same. */
  quiet?: boolean
}

/** A table of numbers as they are read. Where it would be too wide, each row becomes an entry of its own with the heads beside its cells. */
export function DataTable({ caption, head, rows, quiet = false }: Props) {
  return (
    <table class="answers" role="table">
      <caption class={quiet ? 'unseen' : ''}>{caption}</caption>
      <thead role="rowgroup">
        <tr role="row">
          {head.map((word, i) => (
            <th key={i} role="columnheader" scope="col">{word}</th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map(({ key, cells: [first, ...rest] }) => (
          <tr key={key} role="row">
            <th role="rowheader" scope="row">{first}</th>
            {rest.map((cell, i) => (
              <td key={i} role="cell" data-head={head[i + 1]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
