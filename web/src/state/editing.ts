import { batch, signal } from '@preact/signals'
import type { Answer, Reckoning, View } from '../door/protocol.ts'
import { back, changed, forth, type History, isNewStep, noHistory } from './history.ts'
import { type Ask, isBatch, isRewrite, keysOf } from './queue.ts'

/** Something opened beneath a line. */
export interface Slip {
  about: string
  what: 'line' | 'guess'
}

/** What has been changed since the sheet was opened, and how it stood before the last change. */
export class Editing {
  readonly history = signal<History>(noHistory)
  /** What the lines came to before the last change, by id; undefined before the first. */
  readonly before = signal<ReadonlyMap<string, Answer> | undefined>(undefined)
  /** What is open beneath a line, row or cell: its slip, or the questions that lead to a guess. */
  readonly slip = signal<Slip | undefined>(undefined)
  #dragging = false

  /** Opens what goes beneath a line, or closes it when it is open. */
  toggle(slip: Slip): void {
    const open = this.slip.value
    this.slip.value = open?.about === slip.about && open.what === slip.what ? undefined : slip
  }

  /** Forgets it all: another sheet is open. */
  clear(): void {
    batch(() => {
      this.history.value = noHistory
      this.before.value = undefined
      this.slip.value = undefined
    })
    this.#dragging = false
  }

  /** A number begins to be dragged: what stands now is what to compare with. */
  drag(reckoning: Reckoning | undefined): void {
    if (this.#dragging) return
    this.#dragging = true
    this.#remember(reckoning)
  }

  /** The drag is over without a change. */
  letGo(): void {
    this.#dragging = false
    this.before.value = undefined
  }

  /** Notes that the sheet was changed: from what view, to what text, and what it came to before. */
  took(ask: Ask, was: View, now: string, reckoning: Reckoning | undefined, at: number): void {
    if (was.source === now) {
      this.#dragging = false
      return
    }
    if (isRewrite(ask)) return this.#remember(reckoning)
    const before = this.history.value
    const mark = Object.keys(ask).length > 2 ? '' : `${ask.about} ${keysOf(ask.set)}`
    const what = isBatch(ask) ? ask.what : labelOf(was, ask.about)
    this.history.value = changed(before, { text: was.source, what, mark, at })
    if (!this.#dragging && isNewStep(before, this.history.value)) this.#remember(reckoning)
    this.#dragging = false
  }

  /** The text an undo puts back, which is undone from then on; undefined when there is nothing to undo. */
  back(now: string): string | undefined {
    return this.#go(back(this.history.value, now))
  }

  /** The same for doing again what was undone. */
  forth(now: string): string | undefined {
    return this.#go(forth(this.history.value, now))
  }

  #go(to: { text: string; history: History } | undefined): string | undefined {
    if (to !== undefined) this.history.value = to.history
    return to?.text
  }

  #remember(reckoning: Reckoning | undefined): void {
    this.before.value = reckoning === undefined ? undefined : new Map(reckoning.lines.map((answer) => [answer.id, answer]))
  }
}

/** What a line, cell, row or table is called, or its id when it has gone. */
export function labelOf(view: View, about: string): string {
  for (const chapter of view.chapters) {
    for (const line of chapter.lines) if (line.id === about) return line.label
    for (const table of chapter.tables) {
      if (table.id === about) return table.label
      for (const row of table.rows) {
        if (`${table.id}.${row.id}` === about) return row.label
        const column = row.cells.findIndex((cell) => cell.id === about)
        if (column >= 0) return `${row.label}, ${table.columns[column]?.label ?? ''}`
      }
    }
  }
  return about
}
