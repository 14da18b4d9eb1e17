import type { Edit } from '../door/protocol.ts'

/** Puts a later edit after earlier ones, in place of one that said the same thing of the same line. */
export function foldEdit(edits: readonly Edit[], later: Edit): Edit[] {
  return [...edits.filter((e) => e.about !== later.about), later]
}

/** What a round of work is to do: edits first, then one reckoning. */
export interface Round {
  edits: Edit[]
}

/**
 * Gathers edits into rounds so that at most one round is at work and at most
 * one waits, however fast a person types. A round begins on the next call of
 * `soon` (an animation frame on the page).
 */
export class Rounds {
  readonly #work: (round: Round) => Promise<void>
  readonly #soon: (begin: () => void) => void
  #edits: Edit[] = []
  #wanted = false
  #asked = false
  #working = false
  #idle: (() => void)[] = []

  constructor(work: (round: Round) => Promise<void>, soon: (begin: () => void) => void) {
    this.#work = work
    this.#soon = soon
  }

  /** Asks for a round that includes this edit, or for a plain reckoning when there is none. */
  ask(edit?: Edit): void {
    if (edit !== undefined) this.#edits = foldEdit(this.#edits, edit)
    this.#wanted = true
    this.#arrange()
  }

  /** Forgets what was asked and not begun: another sheet was opened. */
  drop(): void {
    this.#edits = []
    this.#wanted = false
    this.#settle()
  }

  /** Whether anything asked is still to be done. */
  get busy(): boolean {
    return this.#wanted || this.#working
  }

  /** Fulfilled when nothing is asked and nothing at work. */
  idle(): Promise<void> {
    return new Promise((resolve) => {
      this.#idle.push(resolve)
      this.#settle()
    })
  }

  #arrange(): void {
    if (this.#asked || this.#working || !this.#wanted) return
    this.#asked = true
    this.#soon(() => {
      this.#asked = false
      if (this.#wanted && !this.#working) void this.#begin()
    })
  }

  async #begin(): Promise<void> {
    const round = { edits: this.#edits }
    this.#edits = []
    this.#wanted = false
    this.#working = true
    // The work tells its own failures; here one only ends the round.
    await this.#work(round).catch(() => undefined)
    this.#working = false
    this.#arrange()
    this.#settle()
  }

  #settle(): void {
    if (this.busy) return
    const idle = this.#idle
    this.#idle = []
    for (const resolve of idle) resolve()
  }
}
