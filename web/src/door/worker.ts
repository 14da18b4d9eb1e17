import type { CallMessage, FromWorker, StartMessage, ToWorker } from './messages.ts'

/** What the toolchain's loader and the reckoner put on the worker's global. */
interface ReckonerScope {
  Go: new () => { importObject: WebAssembly.Imports; run(instance: WebAssembly.Instance): Promise<void> }
  thawbookReady: () => void
  thawbookProgress: (done: number, total: number) => void
  thawbook: { call(method: string, payload: string): { json: string; bytes?: Uint8Array } }
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null
  postMessage(message: FromWorker, transfer?: Transferable[]): void
}

const scope = globalThis as unknown as ReckonerScope

let give: (module: WebAssembly.Module) => void = () => undefined
const given = new Promise<WebAssembly.Module>((resolve) => (give = resolve))

scope.onmessage = (event) => {
  const message = event.data
  if (message.kind === 'start') start(message).catch((reason: unknown) => died(reason))
  if (message.kind === 'module') give(message.module)
  if (message.kind === 'call') answer(message)
}

function answer({ id, method, payload }: CallMessage): void {
  try {
    const { json, bytes } = scope.thawbook.call(method, payload)
    if (bytes === undefined) scope.postMessage({ kind: 'answer', id, json })
    else scope.postMessage({ kind: 'answer', id, json, bytes }, [bytes.buffer])
  } catch (reason) {
    // Whatever reaches here (a RangeError when the stack ran out) has left the
    // instance in an unknown state: the door itself turns panics into answers.
    died(reason)
  }
}

async function start(message: StartMessage): Promise<void> {
  await import(/* @vite-ignore */ message.loader)
  const go = new scope.Go()
  const instance = await WebAssembly.instantiate(await given, go.importObject)
  scope.thawbookProgress = (done, total) => scope.postMessage({ kind: 'progress', done, total })
  scope.thawbookReady = () => scope.postMessage({ kind: 'ready' })
  await go.run(instance)
  died('it ended')
}

function died(reason: unknown): void {
  scope.postMessage({ kind: 'died', reason: reason instanceof Error ? `${reason.name}: ${reason.message}` : String(reason) })
}
