/** The little of the browser's plain storage that the page needs. */
export type PlainStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

/** The browser's storage of that name, or one that forgets where there is none: a private window may refuse to give it. */
export function plainStorage(which: 'localStorage' | 'sessionStorage'): PlainStorage {
  try {
    return globalThis[which]
  } catch {
    return { getItem: () => null, setItem: () => undefined, removeItem: () => undefined }
  }
}

/** A thing that has happened once in this browser. */
export class Mark {
  readonly #storage: PlainStorage
  readonly #key: string

  constructor(storage: PlainStorage, what: string) {
    this.#storage = storage
    this.#key = `thawbook.${what}`
  }

  get made(): boolean {
    return this.#storage.getItem(this.#key) !== null
  }

  /** Makes the mark. A full store forgets it, which does no harm. */
  make(): void {
    try {
      this.#storage.setItem(this.#key, 'yes')
    } catch {
      return
    }
  }
}
