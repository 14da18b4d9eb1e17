import { useEffect, useState } from 'preact/hooks'
import { useApp } from './context.ts'

/** How long a reckoning may take before it is worth a word, in milliseconds. A short one is over before it could be read. */
const patience = 600

/** How far a long reckoning is, with a way to stop it; and that one was stopped, with a way to have it after all. */
export function Drawing() {
  const app = useApp()
  const progress = app.progress.value
  const atWork = progress !== undefined
  const [long, setLong] = useState(false)
  useEffect(() => {
    if (!atWork) return setLong(false)
    const waited = setTimeout(() => setLong(true), patience)
    return () => clearTimeout(waited)
  }, [atWork])
  if (progress !== undefined && long) {
    return (
      <div class="drawing">
        <label>
          {progress.done.toLocaleString('en-US')} of {progress.total.toLocaleString('en-US')} seasons
          <progress value={progress.done} max={progress.total} />
        </label>
        <button type="button" onClick={() => void app.stop()}>
          Stop drawing
        </button>
      </div>
    )
  }
  if (!app.stopped.value) return null
  return (
    <div class="drawing" role="status">
      <p>
        <strong>Stopped. </strong>The sheet has your change; the ranges are from before it.
      </p>
      <button type="button" onClick={() => app.reckonAgain()}>
        Draw the seasons after all
      </button>
    </div>
  )
}
