/** The little of IndexedDB that the page needs: one store of values by name. Every promise rejects when the browser keeps nothing (a private window). */
export class Store<T> {
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
  async get(key: string): Promise<T | undefined> {
    return this.#ask<T | undefined>('readonly', (store) => store.get(key) as IDBRequest<T | undefined>)
  }

  async put(key: string, value: T): Promise<void> {
    await this.#ask('readwrite', (store) => store.put(value, key))
  }

  async remove(key: string): Promise<void> {
    await this.#ask('readwrite', (store) => store.delete(key))
  }

  async all(): Promise<T[]> {
    return this.#ask<T[]>('readonly', (store) => store.getAll() as IDBRequest<T[]>)
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
