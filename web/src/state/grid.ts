/** A cell of a grid, counted from 0. */
export interface At {
  row: number
  column: number
}

/** Keys as the browser names them, with Ctrl (or Command) held or not. */
export interface Key {
  key: string
  ctrl: boolean
}

const page = 8

/**
 * The cell a key leads to, or undefined when the key moves nothing. `widths`
 * gives how many cells each row has; rows may differ.
 */
export function moveBy({ key, ctrl }: Key, at: At, widths: readonly number[]): At | undefined {
  const rows = widths.length
  const lastRow = rows - 1
  const lastOf = (row: number): number => Math.max((widths[row] ?? 1) - 1, 0)
  const to = (row: number, column: number): At | undefined => {
    const r = Math.min(Math.max(row, 0), lastRow)
    const c = Math.min(Math.max(column, 0), lastOf(r))
    return r === at.row && c === at.column ? undefined : { row: r, column: c }
  }
  if (rows === 0) return undefined
  switch (key) {
    case 'ArrowUp':
      return to(at.row - 1, at.column)
    case 'ArrowDown':
      return to(at.row + 1, at.column)
    case 'ArrowLeft':
      return to(at.row, at.column - 1)
    case 'ArrowRight':
      return to(at.row, at.column + 1)
    case 'Home':
      return to(ctrl ? 0 : at.row, 0)
    case 'End':
      return to(ctrl ? lastRow : at.row, lastOf(ctrl ? lastRow : at.row))
    case 'PageUp':
      return to(at.row - page, at.column)
    case 'PageDown':
      return to(at.row + page, at.column)
    default:
      return undefined
  }
}
