/** First message to the worker: where its two files lie, as whole URLs. */
export interface StartMessage {
  kind: 'start'
  loader: string
  reckoner: string
  /** The same reckoner packed, where that is to be asked for first. */
  packed?: string
  /** The reckoner as compiled before, so that starting it again is quick. */
  module?: WebAssembly.Module
}

export interface CallMessage {
  kind: 'call'
  id: number
  method: string
  payload: string
}

export type ToWorker = StartMessage | CallMessage

export type FromWorker =
  | { kind: 'ready' }
  /** The reckoner is compiled; it may be handed to a later worker. */
  | { kind: 'compiled'; module: WebAssembly.Module }
  | { kind: 'answer'; id: number; json: string; bytes?: Uint8Array }
  /** How many of the seasons of the present reckoning are drawn. */
  | { kind: 'progress'; done: number; total: number }
  /** The reckoner can answer no more; this worker must be replaced. */
  | { kind: 'died'; reason: string }
