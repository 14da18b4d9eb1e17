import { signal } from '@preact/signals'
import type { EditSet } from '../door/protocol.ts'
import { type Ask, isTried } from './queue.ts'

/** What was typed or dragged and is not yet in the sheet, by line: fields show it as though it were. */
export class Asked {
  readonly #sets = signal<ReadonlyMap<string, EditSet>>(new Map())

  get value(): ReadonlyMap<string, EditSet> {
    return this.#sets.value
  }

  clear(): void {
    this.#sets.value = new Map()
  }

  ask(about: string, set: EditSet): void {
    this.#sets.value = new Map(this.#sets.value).set(about, set)
  }

  drop(about: string): void {
    const left = new Map(this.#sets.value)
    left.delete(about)
    this.#sets.value = left
  }

  /** Forgets what has been taken or refused, unless something later was asked of the line. What is tried stays until it is let go. */
  forget(asks: readonly Ask[]): void {
    for (const ask of asks) if (!isTried(ask) && this.#sets.value.get(ask.about) === ask.set) this.drop(ask.about)
  }
}
