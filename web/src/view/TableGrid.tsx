import { Fragment } from 'preact'
import { useRef } from 'preact/hooks'
import { type Scale, scaleFor } from '../chart/scale.ts'
import { StripChart } from '../chart/StripChart.tsx'
import type { Answer, ColumnView, LineView, RowView, TableView } from '../door/protocol.ts'
import { Figure as Came } from './answers/Figure.tsx'
import { CautionNote } from './CautionNote.tsx'
import { useApp } from './context.ts'
import { Diagnosis } from './Diagnosis.tsx'
import { SmallPrint } from './SmallPrint.tsx'
import { useGrid } from './useGrid.ts'
import { Working } from './Working.tsx'

const stripWidth = 84

/** A table of like things as a grid: a row for each, a column for each of its lines. */
export function TableGrid({ table }: { table: TableView }) {
  const app = useApp()
  const ref = useRef<HTMLTableElement>(null)
  const keys = useGrid(ref)
  const id = `table-${table.id}`
  const scales = table.columns.map((_, c) => {
    const column = table.rows.map((row) => app.answers.value.get(row.cells[c]?.id ?? ''))
    return scaleFor(column.filter((answer) => answer !== undefined), stripWidth)
  })
  return (
    <div class="table-part">
      <h3 id={id}>{table.label}</h3>
      {table.note && <p class="chapter-note">{table.note}</p>}
      <div class="across">
        <table ref={ref} class="things" role="grid" aria-labelledby={id} {...keys}>
          <thead role="rowgroup">
            <tr role="row">
              <td role="gridcell" class="corner" />
              {table.columns.map((column) => (
                <ColumnHead key={column.id} column={column} />
              ))}
            </tr>
          </thead>
          <tbody role="rowgroup">
            {table.rows.map((row) => (
              <ThingRows key={row.id} table={table} row={row} scales={scales} />
            ))}
          </tbody>
        </table>
      </div>
      <SmallPrint table={table} />
    </div>
  )
}

function ColumnHead({ column }: { column: ColumnView }) {
  return (
    <th role="columnheader" scope="col">
      <span class="column-label">{column.label}</span>
      {column.unit !== '1' && <span class="column-unit">{column.unit}</span>}
      {column.formula && <code class="column-formula">{column.formula}</code>}
    </th>
  )
}

function ThingRows({ table, row, scales }: { table: TableView; row: RowView; scales: readonly (Scale | undefined)[] }) {
  const app = useApp()
  const beside = app.beside.value
  const cautions = [`${table.id}.${row.id}`, ...row.cells.map((c) => c.id)].flatMap((id) => beside?.cautions.get(id) ?? [])
  const found = beside?.diagnostics.get(`${table.id}.${row.id}`) ?? []
  return (
    <Fragment>
      <tr role="row" data-row={`${table.id}.${row.id}`}>
        <th role="rowheader" scope="row" class="label">
          <span class="line-label">{row.label}</span>
          {row.note && <span class="line-note">{row.note}</span>}
          {row.source && !row.caution && <cite class="line-source">{row.source}</cite>}
          {found.map((diagnostic, i) => (
            <Diagnosis key={i} found={diagnostic} />
          ))}
        </th>
        {row.cells.map((cell, c) => (
          <Cell key={cell.id} cell={cell} row={row} column={table.columns[c]} scale={scales[c]} />
        ))}
      </tr>
      {cautions.length > 0 && (
        <tr role="row" class="beside-line">
          <td role="gridcell" colSpan={table.columns.length + 1}>
            {cautions.map((caution, i) => (
              <CautionNote key={i} caution={caution} />
            ))}
          </td>
        </tr>
      )}
    </Fragment>
  )
}

interface CellProps {
  cell: LineView
  row: RowView
  column: ColumnView | undefined
  scale: Scale | undefined
}

function Cell({ cell, row, column, scale }: CellProps) {
  const app = useApp()
  const found = app.beside.value?.diagnostics.get(cell.id) ?? []
  const answer = app.answers.value.get(cell.id)
  const columnLabel = column?.label ?? cell.label
  // A column's own formula stands once, at the head; only a row's exception is shown in the cell.
  const inherited = cell.kind === 'formula' && cell.formula === column?.formula
  const bare = cell.kind === 'is' && app.system.value === 'as-written'
  return (
    <td role="gridcell" data-line={cell.id} class={`thing kind-${cell.kind}`}>
      <span class="narrow-label" aria-hidden="true">
        {columnLabel}
        {column !== undefined && column.unit !== '1' && `, ${column.unit}`}
      </span>
      {cell.changed && !inherited && <span class="line-changed">changed</span>}
      {!inherited && <Working line={cell} label={`${row.label}: ${columnLabel}`} />}
      {!bare && <Figure answer={answer} scale={scale} />}
      {found.map((diagnostic, i) => (
        <Diagnosis key={i} found={diagnostic} formula={cell.formula} />
      ))}
    </td>
  )
}

function Figure({ answer, scale }: { answer: Answer | undefined; scale: Scale | undefined }) {
  if (answer === undefined) return <span class="nothing-yet">—</span>
  const ranged = answer.shown.low !== answer.shown.high
  return (
    <span class="cell-answer">
      <Came id={answer.id} label={answer.label} shown={answer.shown.middle} inGrid />
      {ranged && scale !== undefined && <StripChart answer={answer} scale={scale} height={12} />}
    </span>
  )
}
