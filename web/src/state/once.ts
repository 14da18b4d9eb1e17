import { effect } from '@preact/signals'

/** Calls back once, after signals have come to a state that is waited for. Gives a way to wait no longer. */
export function once(reached: () => boolean, then: () => void): () => void {
  let waiting = true
  const stop = effect(() => {
    if (!waiting || !reached()) return
    waiting = false
    // Not within the effect, which would then follow whatever is read there.
    queueMicrotask(() => {
      stop()
      then()
    })
  })
  return () => {
    waiting = false
    stop()
  }
}
