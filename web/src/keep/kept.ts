import type { Files } from '../door/protocol.ts'
import { Store } from './database.ts'

/** A sheet as it is kept in this browser between visits. */
export interface Kept {
  /** The sheet's file name; also what it is kept under. */
  name: string
  title: string
  /** The sheet's text and those of the sheets it is taken from, by name. */
  files: Files
  /** When it was last changed, in milliseconds since 1970. */
  at: number
  /** Whether it is one of the shipped sheets, changed, rather than a file that was opened. */
  shipped: boolean
}

/** The sheets kept in this browser. Nothing leaves it. */
export class Keeper {
  readonly #store = new Store<Kept>('thawbook', 'sheets')

  put(kept: Kept): Promise<void> {
    return this.#store.put(kept.name, kept)
  }

  get(name: string): Promise<Kept | undefined> {
    return this.#store.get(name)
  }

  forget(name: string): Promise<void> {
    return this.#store.remove(name)
  }

  /** Every kept sheet, the last changed first. */
  async all(): Promise<Kept[]> {
    return (await this.#store.all()).sort((a, b) => b.at - a.at)
  }
}
