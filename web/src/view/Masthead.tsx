import { useRef } from 'preact/hooks'
import { addressOf, shelfAddress } from './address.ts'
import { useApp } from './context.ts'
import { saveAs } from './files.ts'
import { UnitsSwitch } from './UnitsSwitch.tsx'

/** The page's head: its name, and what can be done with whole sheets. */
export function Masthead() {
  const app = useApp()
  const sheet = app.sheet.value
  return (
    <header class="masthead">
      <p class="name">
        <a href={shelfAddress}>Thawbook</a>
      </p>
      <p class="motto">next season, line by line</p>
      <div class="doings">
        {sheet !== undefined && <a href={shelfAddress}>All sheets</a>}
        <OpenFile />
        {sheet !== undefined && (
          <button type="button" onClick={() => saveAs(sheet.name, sheet.view.source)}>
            Save this sheet
          </button>
        )}
        {sheet !== undefined && <UnitsSwitch />}
      </div>
    </header>
  )
}

function OpenFile() {
  const app = useApp()
  const input = useRef<HTMLInputElement>(null)
  const opened = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return
    await app.openFile(file.name, await file.text())
    if (app.sheet.value?.name === file.name) history.pushState(null, '', addressOf(file.name))
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
