/** The little of IndexedDB that the page needs: one store of values by name. Every promise rejects when the browser keeps nothing (a private window). */
export class Store {
  readonly #opened: Promise<IDBDatabase>
  readonly #name: string

  constructor(database: string, name: string) {
    this.#name = name
    this.#opened = new Promise((resolve, reject) => {
      const request = indexedDB.open(database, 1)
      request.onupgradeneeded = () => request.result.createObjectStore(name)
      request.onsuccess = () => resolve(request.result)
      request.onerror = () => reject(request.error ?? new Error('nothing can be kept here'))
    })
    // Each use reports the failure itself; this only keeps it from being called unhandled.
    this.#opened.catch(() => undefined)
  }

  /** The value kept under a key, or undefined. */
  async get(key: string): Promise<unknown> {
    return this.#ask('readonly', (store) => store.get(key))
  }

  /**
   * Looks at what is kept under a key and puts something in its place, with
   * nothing between the two, whichever window asks. `undefined` from `next`
   * leaves what is there.
   */
  async change(key: string, next: (old: unknown) => unknown): Promise<void> {
    await this.#ask('readwrite', (store) => {
      const request: IDBRequest<unknown> = store.get(key)
      request.onsuccess = () => {
        const value = next(request.result)
        if (value !== undefined) store.put(value, key)
      }
      return request
    })
  }

  async remove(key: string): Promise<void> {
    await this.#ask('readwrite', (store) => store.delete(key))
  }

  /** Every key with its value. */
  async entries(): Promise<[string, unknown][]> {
    let keys: IDBValidKey[] = []
    const values = await this.#ask('readonly', (store): IDBRequest<unknown[]> => {
      const request = store.getAllKeys()
      request.onsuccess = () => (keys = request.result)
      return store.getAll()
    })
    return values.map((value, i) => [String(keys[i]), value])
  }

  async #ask<R>(mode: IDBTransactionMode, what: (store: IDBObjectStore) => IDBRequest<R>): Promise<R> {
    const database = await this.#opened
    return new Promise((resolve, reject) => {
      const transaction = database.transaction(this.#name, mode)
      const request = what(transaction.objectStore(this.#name))
      transaction.oncomplete = () => resolve(request.result)
      transaction.onerror = () => reject(transaction.error ?? new Error('the store failed'))
      transaction.onabort = () => reject(transaction.error ?? new Error('the store gave up'))
    })
  }
}
