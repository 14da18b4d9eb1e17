import type { WorkerLike } from './door.ts'
import type { CallMessage, FromWorker, ToWorker } from './messages.ts'
import type { EditSet, OpenPayload, View } from './protocol.ts'

/**
 * A stand-in for the reckoner's worker, for tests of the page's own state. Its
 * sheet is JSON: `{"title": …, "taps": …}`; its one answer is the taps it was
 * told. It dies when asked to open or edit to the number 666.
 */
export class FakeWorker implements WorkerLike {
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null = null
  onerror: ((event: ErrorEvent) => void) | null = null
  readonly calls: CallMessage[] = []
  terminated = false
  /** The reckoner it was handed. */
  given: WebAssembly.Module | undefined
  /** Held back answers wait for `release`. */
  hold = false
  #held: (() => void)[] = []
  #book = { title: '', taps: 0 }
  #tried: number | undefined

  postMessage(message: ToWorker): void {
    if (message.kind === 'start') return
    if (message.kind === 'module') {
      this.given = message.module
      return this.#say({ kind: 'ready' })
    }
    this.calls.push(message)
    const answer = (): void => this.#answer(message)
    if (this.hold) this.#held.push(answer)
    else answer()
  }

  release(): void {
    this.hold = false
    for (const answer of this.#held.splice(0)) answer()
  }

  terminate(): void {
    this.terminated = true
  }

  fail(message: string): void {
    this.onerror?.({ message } as ErrorEvent)
  }

  #answer({ id, method, payload }: CallMessage): void {
    const json = this.#do(method, JSON.parse(payload))
    this.#say(json === undefined ? { kind: 'died', reason: 'RangeError: Maximum call stack size exceeded' } : { kind: 'answer', id, json })
  }

  #do(method: string, payload: unknown): string | undefined {
    if (method === 'open') {
      const { name, files } = payload as OpenPayload
      const text = files[name] ?? ''
      if (!text.startsWith('{')) return this.#kept('not-a-sheet', 'not a sheet')
      this.#book = JSON.parse(text) as { title: string; taps: number }
    }
    if (method === 'edit') {
      const { edits } = payload as { edits: { about: string; set: EditSet & { title?: string } }[] }
      if (edits.some((e) => e.about !== 'taps' && e.about !== '')) return this.#kept('edit-unknown', 'no such line')
      for (const { set } of edits) this.#book = { title: set.title ?? this.#book.title, taps: set.is ?? this.#book.taps }
    }
    if (method === 'write') this.#book = JSON.parse((payload as { text: string }).text) as { title: string; taps: number }
    if (method !== 'reckon') this.#tried = undefined
    if (method === 'try') {
      this.#tried = (payload as { edits: { set: EditSet }[] }).edits[0]?.set.is
      return JSON.stringify({ diagnostics: null })
    }
    if (this.#book.taps === 666) return undefined
    if (method === 'reckon') this.#say({ kind: 'progress', done: 5, total: 10 })
    if (method === 'reckon') return JSON.stringify({ ...this.#book, seasons: 10, seed: 1, lines: [], warnings: null, cautions: null, paragraph: `${this.#tried ?? this.#book.taps} taps` })
    return JSON.stringify(this.#view())
  }

  #kept(code: string, message: string): string {
    return JSON.stringify({ ...this.#view(), kept: true, diagnostics: [{ code, severity: 'error', place: {}, message }] })
  }

  #view(): View {
    const { title, taps } = this.#book
    return {
      name: 'fake', title, about: '', money: 'USD', seasons: 10, seed: 1, diagnostics: [], source: JSON.stringify(this.#book),
      chapters: [{ title: 'C', lines: [{ id: 'taps', label: 'Taps', kind: 'is', unit: 'tap', is: taps }], tables: [] }],
    }
  }

  #say(message: FromWorker): void {
    // A worker never answers within the call that asked it.
    queueMicrotask(() => this.onmessage?.({ data: message } as MessageEvent<FromWorker>))
  }
}
