import { useApp } from './context.ts'
import { Diagnosis } from './Diagnosis.tsx'
import { saveAs } from './files.ts'

/** What the page has to tell, if anything, with a way to put it aside. */
export function NoticeBar() {
  const app = useApp()
  const notice = app.notice.value
  const unread = app.unread.value
  const keptText = app.kept.value.find((k) => k.name === unread?.name)?.files[unread?.name ?? '']
  return (
    <div role="status" class="notices">
      {notice !== undefined && (
        <div class={`notice ${notice.tone}`}>
          <p>
            <strong>{notice.tone === 'trouble' ? 'Trouble. ' : 'Note. '}</strong>
            {notice.text} {notice.hint}
          </p>
          {app.givenUp && (
            <button type="button" onClick={() => void app.tryAgain()}>
              Try again
            </button>
          )}
          <button type="button" onClick={() => (app.notice.value = undefined)}>
            Put aside
          </button>
        </div>
      )}
      {unread !== undefined && (
        <div class="notice trouble">
          <div>
            <p>
              <strong>Trouble. </strong>“{unread.name}” could not be read as a sheet.
            </p>
            {unread.diagnostics.map((found, i) => (
              <Diagnosis key={i} found={found} />
            ))}
          </div>
          {unread.shipped && (
            <button type="button" onClick={() => void app.startAgain(unread.name)}>
              Open the shipped sheet instead
            </button>
          )}
          {keptText !== undefined && (
            <button type="button" onClick={() => saveAs(unread.name, keptText)}>
              Save its text to a file
            </button>
          )}
          <button type="button" onClick={() => (app.unread.value = undefined)}>
            Put aside
          </button>
        </div>
      )}
    </div>
  )
}
