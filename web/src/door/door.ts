import type { FromWorker, StartMessage, ToWorker } from './messages.ts'

/** The part of a Worker that the door uses, so that tests may stand in for one. */
export interface WorkerLike {
  postMessage(message: ToWorker): void
  terminate(): void
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

/** Why a call was never answered: the reckoner behind the door died. */
export class Died extends Error {
  constructor(reason: string) {
    super(reason)
    this.name = 'Died'
  }
}

export interface DoorAnswer {
  json: string
  bytes?: Uint8Array
}

interface Waiting {
  resolve: (answer: DoorAnswer) => void
  reject: (reason: Died) => void
}

/**
 * The way to one reckoner in one worker. Calls made before it is ready wait
 * for it. When it dies every waiting call is rejected with Died, and so is
 * every later one until `restart`.
 */
export class Door {
  readonly #hire: () => WorkerLike
  readonly #start: StartMessage
  readonly #compile: () => Promise<WebAssembly.Module>
  #module: Promise<WebAssembly.Module> | undefined
  readonly #waiting = new Map<number, Waiting>()
  #worker: WorkerLike | undefined
  #ready = Promise.resolve()
  #next = 1
  #dead = ''
  /** Told how far a long reckoning is, in seasons. */
  onprogress: (done: number, total: number) => void = () => undefined

  constructor(hire: () => WorkerLike, start: StartMessage, compile: () => Promise<WebAssembly.Module>) {
    this.#hire = hire
    this.#start = start
    this.#compile = compile
    this.restart()
  }

  /** Whether the reckoner has died and not been started again. */
  get dead(): boolean {
    return this.#dead !== ''
  }

  /** Ends the present worker, if any, and starts another with nothing open in it. */
  restart(): void {
    this.#bury('started again')
    this.#dead = ''
    this.#module ??= this.#compile()
    const worker = this.#hire()
    this.#worker = worker
    this.#ready = new Promise((ready) => {
      worker.onmessage = (event) => {
        if (event.data.kind === 'ready') ready()
        else this.#hear(event.data)
      }
    })
    worker.onerror = (event) => this.#bury(event.message || 'the worker failed')
    worker.postMessage(this.#start)
    this.#module.then(
      (module) => worker.postMessage({ kind: 'module', module }),
      (reason: unknown) => {
        // Perhaps the host was away; another start may find it.
        this.#module = undefined
        if (this.#worker === worker) this.#bury(reason instanceof Error ? reason.message : String(reason))
      },
    )
  }

  /** Asks the reckoner. The payload is sent as JSON. Rejects with Died and nothing else. */
  call(method: string, payload: object): Promise<DoorAnswer> {
    if (this.dead) return Promise.reject(new Died(this.#dead))
    const id = this.#next++
    const worker = this.#worker
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject })
      void this.#ready.then(() => {
        if (this.#waiting.has(id)) worker?.postMessage({ kind: 'call', id, method, payload: JSON.stringify(payload) })
      })
    })
  }

  #hear(message: FromWorker): void {
    if (message.kind === 'died') this.#bury(message.reason)
    if (message.kind === 'progress') this.onprogress(message.done, message.total)
    if (message.kind !== 'answer') return
    const waiting = this.#waiting.get(message.id)
    this.#waiting.delete(message.id)
    waiting?.resolve(message.bytes === undefined ? { json: message.json } : { json: message.json, bytes: message.bytes })
  }

  #bury(reason: string): void {
    this.#dead = reason
    if (this.#worker !== undefined) {
      this.#worker.onmessage = null
      this.#worker.onerror = null
      this.#worker.terminate()
      this.#worker = undefined
    }
    const waiting = [...this.#waiting.values()]
    this.#waiting.clear()
    for (const { reject } of waiting) reject(new Died(reason))
  }
}
