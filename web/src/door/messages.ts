/** First message to the worker: where the loader lies, as a whole URL. */
export interface StartMessage {
  kind: 'start'
  loader: string
}

/** The reckoner itself, compiled by the page, which can begin before its worker is up and need not do it again. */
export interface ModuleMessage {
  kind: 'module'
  module: WebAssembly.Module
}

export interface CallMessage {
  kind: 'call'
  id: number
  method: string
  payload: string
}

export type ToWorker = StartMessage | ModuleMessage | CallMessage

export type FromWorker =
  | { kind: 'ready' }
  | { kind: 'answer'; id: number; json: string; bytes?: Uint8Array }
  /** How many of the seasons of the present reckoning are drawn. */
  | { kind: 'progress'; done: number; total: number }
  /** The reckoner can answer no more; this worker must be replaced. */
  | { kind: 'died'; reason: string }
