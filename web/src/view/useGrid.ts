import type { RefObject } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { type At, moveBy } from '../state/grid.ts'

const cells = '[role=gridcell], [role=rowheader]'
const controls = 'input, select, textarea, button'

/**
 * Makes a table with grid roles one tab stop: arrow keys move between cells,
 * Enter or F2 goes into a cell's fields, Tab goes along them, Escape or Enter
 * comes back out. The header row is passed over. Fields must have tabindex -1.
 */
export function useGrid(table: RefObject<HTMLTableElement | null>) {
  const at = useRef<At>({ row: 0, column: 0 })
  /** The column that up and down keep to, across rows that are shorter. */
  const wish = useRef(0)

  const rows = (): HTMLElement[][] =>
    [...(table.current?.querySelectorAll('tbody tr') ?? [])].map((row) => [...row.querySelectorAll<HTMLElement>(cells)])

  const mark = (): void => {
    const all = rows()
    const row = Math.min(at.current.row, all.length - 1)
    const here = all[row]?.[Math.min(at.current.column, (all[row]?.length ?? 1) - 1)]
    for (const cell of all.flat()) cell.tabIndex = cell === here ? 0 : -1
  }
  // After every render, because rows come and go with what is said beside them.
  useLayoutEffect(mark)

  const whereIs = (cell: Element | null): At | undefined => {
    const all = rows()
    const row = all.findIndex((r) => r.some((c) => c === cell))
    return row < 0 ? undefined : { row, column: all[row]?.findIndex((c) => c === cell) ?? 0 }
  }
  const onFocusIn = (event: FocusEvent): void => {
    const found = event.target instanceof Element ? whereIs(event.target.closest(cells)) : undefined
    if (found === undefined) return
    at.current = found
    wish.current = found.column
    mark()
  }
  const onKeyDown = (event: KeyboardEvent): void => {
    if (!(event.target instanceof HTMLElement) || event.altKey) return
    // By the event's path, because a field that closed on this key is out of the page by now.
    const cell = event.composedPath().find((e): e is HTMLElement => e instanceof HTMLElement && e.matches(cells))
    if (cell === undefined) return
    if (event.target === cell) keyOnCell(event, cell)
    else keyInField(event, cell, event.target)
  }
  const keyOnCell = (event: KeyboardEvent, cell: HTMLElement): void => {
    if (event.key === 'Enter' || event.key === 'F2') {
      event.preventDefault()
      enter(cell)
      return
    }
    if (startsTyping(event)) {
      // The key itself then lands in the field, in place of what stood there.
      const field = cell.querySelector('input')
      if (field !== null) focusField(field)
      return
    }
    const ctrl = event.ctrlKey || event.metaKey
    const column = wish.current
    const upOrDown = /^(Arrow|Page)(Up|Down)$/.test(event.key)
    const next = moveBy({ key: event.key, ctrl }, upOrDown ? { row: at.current.row, column } : at.current, rows().map((r) => r.length))
    if (next === undefined) return
    event.preventDefault()
    rows()[next.row]?.[next.column]?.focus()
    if (upOrDown) wish.current = column
  }
  return { onFocusIn, onKeyDown }
}

function keyInField(event: KeyboardEvent, cell: HTMLElement, field: HTMLElement): void {
  if (event.key === 'Escape' || event.key === 'F2' || (event.key === 'Enter' && !(field instanceof HTMLButtonElement))) {
    event.preventDefault()
    cell.focus()
    return
  }
  if (event.key !== 'Tab') return
  const fields = [...cell.querySelectorAll<HTMLElement>(controls)]
  const next = fields[fields.indexOf(field) + (event.shiftKey ? -1 : 1)]
  if (next === undefined) {
    // Out of the last field the browser goes on from the cell, so that Tab leaves the grid.
    cell.focus()
    return
  }
  event.preventDefault()
  focusField(next)
}

function enter(cell: HTMLElement): void {
  const field = cell.querySelector<HTMLElement>(controls)
  if (field instanceof HTMLButtonElement) field.click()
  else if (field !== null) focusField(field)
}

function focusField(field: HTMLElement): void {
  field.focus()
  if (field instanceof HTMLInputElement) field.select()
}

function startsTyping(event: KeyboardEvent): boolean {
  return /^[\d.−-]$/.test(event.key) && !event.ctrlKey && !event.metaKey
}
