import { useApp, useShelving } from './context.ts'

/** What another window did to the open sheet, and what was taken off the shelf: each with the way back. */
export function WindowNotices() {
  const app = useApp()
  const shelving = useShelving()
  const elsewhere = app.ledger.elsewhere.value
  const taken = shelving.taken.value
  return (
    <div role="status" class="notices">
      {elsewhere !== undefined && (
        <div class="notice news">
          <p>
            <strong>Note. </strong>Another window has changed this sheet since it was opened here.
          </p>
          <button type="button" onClick={() => void app.openNamed(elsewhere.name)}>
            Show what it did
          </button>
          <button type="button" onClick={() => void app.ledger.keepBoth()}>
            Keep this one beside it
          </button>
        </div>
      )}
      {taken !== undefined && (
        <div class="notice news">
          <p>
            <strong>Note. </strong>“{taken.title}” was taken off the shelf.
          </p>
          <button type="button" onClick={() => void shelving.putBack()}>
            Put it back
          </button>
          <button type="button" onClick={() => (shelving.taken.value = undefined)}>
            Put aside
          </button>
        </div>
      )}
    </div>
  )
}
