import { useEffect, useRef, useState } from 'preact/hooks'
import type { App } from '../state/app.ts'
import { useApp } from './context.ts'

/** Far more than any sheet: the reckoner itself says where a sheet is too large. */
const most = 8_000_000

/** Opens a file the person chose or dropped. */
async function openChosen(app: App, file: File | undefined): Promise<void> {
  if (file === undefined) return
  if (file.size > most) {
    app.notice.value = { tone: 'trouble', text: `“${file.name}” is far too large to be a sheet.` }
    return
  }
  await app.openFile(file.name, await file.text())
}

/** Opens a sheet from a file, by a button. */
export function OpenFile() {
  const app = useApp()
  const input = useRef<HTMLInputElement>(null)
  const opened = async (file: File | undefined): Promise<void> => {
    await openChosen(app, file)
    if (input.current !== null) input.current.value = ''
  }
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        Open a file
      </button>
      <input
        ref={input}
        class="unseen"
        type="file"
        accept=".yaml,.yml"
        aria-label="A sheet file"
        tabIndex={-1}
        onChange={(event) => void opened(event.currentTarget.files?.[0])}
      />
    </>
  )
}

/** Opens a sheet file let go anywhere over the page, and says so while one is held there. */
export function DropFile() {
  const app = useApp()
  const [held, setHeld] = useState(false)
  useEffect(() => {
    const withFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false
    const over = (event: DragEvent): void => {
      if (!withFile(event)) return
      // Else the browser would leave the page for the file.
      event.preventDefault()
      setHeld(true)
    }
    const gone = (event: DragEvent): void => {
      if (event.relatedTarget === null) setHeld(false)
    }
    const drop = (event: DragEvent): void => {
      setHeld(false)
      if (!withFile(event)) return
      event.preventDefault()
      void openChosen(app, event.dataTransfer?.files[0])
    }
    document.addEventListener('dragover', over)
    document.addEventListener('dragleave', gone)
    document.addEventListener('drop', drop)
    return () => {
      document.removeEventListener('dragover', over)
      document.removeEventListener('dragleave', gone)
      document.removeEventListener('drop', drop)
    }
  }, [app])
  return held ? (
    <div class="drop-here" aria-hidden="true">
      <p>Let go to open the sheet</p>
    </div>
  ) : null
}
