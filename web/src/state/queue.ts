import type { Edit, EditSet } from '../door/protocol.ts'

/** A change that is shown and not written, while a number is dragged; an empty set lets go of it. */
export interface Tried extends Edit {
  trial: true
}

/** Another text of the whole sheet, as an undo asks for. */
export interface Rewrite extends Edit {
  text: string
}

/** Several changes that are made or refused together, and undone together. */
export interface Batch extends Edit {
  edits: readonly Edit[]
  /** What they are about, in words. */
  what: string
}

/** What may be asked of the sheet. */
export type Ask = Edit | Tried | Rewrite | Batch

export const isTried = (ask: Ask): ask is Tried => 'trial' in ask
export const isRewrite = (ask: Ask): ask is Rewrite => 'text' in ask
export const isBatch = (ask: Ask): ask is Batch => 'edits' in ask

/** Whether an ask only sets keys of a line, so that a later one may stand for it. */
function onlySets(ask: Ask): boolean {
  return Object.keys(ask).every((key) => key === 'about' || key === 'set' || key === 'trial')
}

const values = ['is', 'guess', 'records', 'choose', 'formula']

/** The keys an edit sets, what a line comes to counting as one: a later number replaces an earlier guess. */
export function keysOf(set: EditSet): string {
  const keys = Object.keys(set).map((key) => (values.includes(key) ? 'value' : key))
  return keys.sort().join(' ')
}

/** Puts a later edit after earlier ones, in place of one that said the same thing of the same line. Only the last of what is tried is tried. */
export function foldEdit(edits: readonly Ask[], later: Ask): Ask[] {
  const replaced = (e: Ask): boolean => {
    if (isTried(e)) return isTried(later) || (onlySets(later) && e.about === later.about)
    return !isTried(later) && onlySets(e) && onlySets(later) && e.about === later.about && keysOf(e.set) === keysOf(later.set)
  }
  return [...edits.filter((e) => !replaced(e)), later]
}

/** What a round of work is to do: edits first, then one reckoning. */
export interface Round {
  edits: Ask[]
}

/**
 * Gathers edits into rounds so that at most one round is at work and at most
 * one waits, however fast a person types. A round begins on the next call of
 * `soon` (an animation frame on the page).
 */
export class Rounds {
  readonly #work: (round: Round) => Promise<void>
  readonly #soon: (begin: () => void) => void
  #edits: Ask[] = []
  #wanted = false
  #asked = false
  #working = false
  #idle: (() => void)[] = []

  constructor(work: (round: Round) => Promise<void>, soon: (begin: () => void) => void) {
    this.#work = work
    this.#soon = soon
  }

  /** Asks for a round that includes this edit, or for a plain reckoning when there is none. */
  ask(edit?: Ask): void {
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
