import type { Files } from '../door/protocol.ts'
import { Store } from './database.ts'

/** The form that this page keeps sheets in. A later page may keep them in another; then this one leaves them alone. */
const form = 1

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
  /** Differs after each change, whichever window made it; 0 before the first. */
  version: number
}

/** Something kept that this page cannot use: it is left as it is. */
export interface Spoilt {
  name: string
  why: 'newer' | 'damaged'
  /** The sheet's own text as far as it can be made out. */
  text?: string
}

/** What came of keeping a sheet: its new version, or undefined when what is kept is not what the change was made to. */
export type Put = number | undefined

/** What is kept under a name, made out as far as can be. */
export function readKept(name: string, value: unknown): Kept | Spoilt {
  const said = isRecord(value) ? value : {}
  const files = isRecord(said['files']) ? said['files'] : {}
  const text = files[name]
  const spoilt = (why: Spoilt['why']): Spoilt => ({ name, why, ...(typeof text === 'string' ? { text } : {}) })
  const madeAs = said['form'] ?? form
  if (typeof madeAs !== 'number') return spoilt('damaged')
  if (madeAs > form) return spoilt('newer')
  const { title, at, shipped, version = 0 } = said
  const whole =
    typeof text === 'string' &&
    Object.values(files).every((each) => typeof each === 'string') &&
    typeof title === 'string' && typeof at === 'number' && typeof shipped === 'boolean' && typeof version === 'number'
  return whole ? { name, title, files: files as Files, at, shipped, version } : spoilt('damaged')
}

/** Whether what is kept can be used. */
export function isKept(found: Kept | Spoilt): found is Kept {
  return 'files' in found
}

/**
 * What a change of a sheet puts in place of what is kept, or undefined when
 * that is not what the change was made to: another window was there first, or
 * it is something this page cannot use. Removed altogether, it is put back.
 */
export function nextKept(kept: Kept, old: unknown): (Kept & { form: number }) | undefined {
  if (old === undefined) return { ...kept, form, version: Math.max(kept.at, kept.version + 1) }
  const found = readKept(kept.name, old)
  if (!isKept(found) || found.version !== kept.version) return undefined
  // The clock and not a count: a sheet removed and begun again must not come to a version it had.
  return { ...kept, form, version: Math.max(kept.at, kept.version + 1) }
}

/** The sheets kept in this browser. Nothing leaves it. */
export class Keeper {
  readonly #store = new Store('thawbook', 'sheets')

  /** Keeps a sheet that was changed from the version it bears. */
  async put(kept: Kept): Promise<Put> {
    let version: Put
    await this.#store.change(kept.name, (old) => {
      const next = nextKept(kept, old)
      version = next?.version
      return next
    })
    return version
  }

  async get(name: string): Promise<Kept | Spoilt | undefined> {
    const value = await this.#store.get(name)
    return value === undefined ? undefined : readKept(name, value)
  }

  /** Takes a sheet away, and gives what has to be handed to `restore` to have it back. */
  async forget(name: string): Promise<unknown> {
    const value = await this.#store.get(name)
    await this.#store.remove(name)
    return value
  }

  /** Puts back what `forget` took, unless something else has been kept there since. */
  async restore(name: string, value: unknown): Promise<void> {
    await this.#store.change(name, (old) => (old === undefined ? value : undefined))
  }

  /** Everything kept, the last changed first; what cannot be used at the end. */
  async all(): Promise<(Kept | Spoilt)[]> {
    const at = (found: Kept | Spoilt): number => (isKept(found) ? found.at : 0)
    return (await this.#store.entries()).map(([name, value]) => readKept(name, value)).sort((a, b) => at(b) - at(a))
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
