import { useApp } from './context.ts'
import { useUndoKeys } from './useUndoKeys.ts'

/** What was changed last, with the way back and forth again. Nothing before the first change. */
export function LastChange() {
  const app = useApp()
  useUndoKeys(app)
  const { past, future } = app.editing.history.value
  if (past.length === 0 && future.length === 0) return null
  const last = past.at(-1)
  const next = future[0]
  return (
    <p class="last-change">
      {last && <span>Last changed: {last.what || 'the sheet'}.</span>}
      <button type="button" disabled={last === undefined} aria-keyshortcuts="Control+Z" onClick={() => void app.step('back')}>
        Undo
      </button>
      {next && (
        <button type="button" aria-keyshortcuts="Control+Shift+Z" aria-label={`Do again: ${next.what || 'the sheet'}`} onClick={() => void app.step('forth')}>
          Do again
        </button>
      )}
    </p>
  )
}
