import { describe, expect, it } from 'vitest'
import { moveBy } from './grid.ts'

/** Two lines of four cells, a caution's single cell between them. */
const widths = [4, 1, 4]
const move = (key: string, row: number, column: number, ctrl = false) => moveBy({ key, ctrl }, { row, column }, widths)

describe('moveBy', () => {
  it('goes one cell by arrow', () => {
    expect(move('ArrowRight', 0, 1)).toEqual({ row: 0, column: 2 })
    expect(move('ArrowLeft', 0, 1)).toEqual({ row: 0, column: 0 })
    expect(move('ArrowUp', 2, 0)).toEqual({ row: 1, column: 0 })
  })

  it('falls to the last cell of a shorter row', () => {
    expect(move('ArrowDown', 0, 3)).toEqual({ row: 1, column: 0 })
  })

  it('stays at the edges', () => {
    expect(move('ArrowLeft', 0, 0)).toBeUndefined()
    expect(move('ArrowUp', 0, 2)).toBeUndefined()
    expect(move('ArrowRight', 2, 3)).toBeUndefined()
    expect(move('ArrowDown', 2, 3)).toBeUndefined()
  })

  it('goes to the ends of a row, and with Ctrl of the grid', () => {
    expect(move('End', 0, 0)).toEqual({ row: 0, column: 3 })
    expect(move('Home', 0, 3)).toEqual({ row: 0, column: 0 })
    expect(move('End', 0, 0, true)).toEqual({ row: 2, column: 3 })
    expect(move('Home', 2, 3, true)).toEqual({ row: 0, column: 0 })
  })

  it('goes by pages within the grid', () => {
    expect(move('PageDown', 0, 1)).toEqual({ row: 2, column: 1 })
    expect(moveBy({ key: 'PageUp', ctrl: false }, { row: 20, column: 0 }, Array.from({ length: 30 }, () => 4))).toEqual({ row: 12, column: 0 })
  })

  it('leaves other keys alone', () => {
    expect(move('a', 0, 0)).toBeUndefined()
    expect(move('Tab', 0, 0)).toBeUndefined()
    expect(moveBy({ key: 'ArrowDown', ctrl: false }, { row: 0, column: 0 }, [])).toBeUndefined()
  })
})
