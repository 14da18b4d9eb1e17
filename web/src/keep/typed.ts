import type { Edit, EditSet } from '../door/protocol.ts'
import type { PlainStorage } from './marks.ts'

const key = 'thawbook.typed'

interface Slip {
  name: string
  edits: Edit[]
  /** It was taken up once before: whatever ended the page then may have been its doing. */
  again: boolean
}

/**
 * A slip beside the sheet with what was typed and is not yet kept in it: a
 * page that ends while the reckoner is at work finds it on its return. Kept by
 * window, at once, which the sheet itself cannot be.
 */
export class TypedSlip {
  readonly #storage: PlainStorage
  #again = false

  constructor(storage: PlainStorage) {
    this.#storage = storage
  }

  /** Takes up what an earlier page of this window left, if anything; never the same slip a third time. */
  take(): { name: string; edits: Edit[] } | undefined {
    const text = this.#storage.getItem(key)
    this.#storage.removeItem(key)
    const slip = text === null ? undefined : readSlip(text)
    if (slip === undefined || slip.again) return undefined
    this.#again = true
    return slip
  }

  /** Writes down what is typed. */
  write(name: string, asked: ReadonlyMap<string, EditSet>): void {
    const slip: Slip = { name, edits: [...asked].map(([about, set]) => ({ about, set })), again: this.#again }
    try {
      this.#storage.setItem(key, JSON.stringify(slip))
    } catch {
      // Full, or refused: the sheet is still kept a moment later.
      return
    }
  }

  /** All that was typed is kept in the sheet. */
  clear(): void {
    this.#again = false
    this.#storage.removeItem(key)
  }
}

function readSlip(text: string): Slip | undefined {
  try {
    const said = JSON.parse(text) as Partial<Slip> | null
    if (typeof said?.name !== 'string' || !Array.isArray(said.edits)) return undefined
    return { name: said.name, edits: said.edits, again: said.again === true }
  } catch {
    return undefined
  }
}
