import { newAddress, shelfAddress } from './address.ts'
import { useApp } from './context.ts'
import { saveAs } from './files.ts'
import { OpenFile } from './OpenFile.tsx'
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
        <a href={newAddress}>New sheet</a>
        <OpenFile />
        {sheet !== undefined && (
          <button type="button" onClick={() => saveAs(sheet.name, sheet.view.source)}>
            Save this sheet
          </button>
        )}
        {sheet !== undefined && (
          <button type="button" onClick={() => print()}>
            Print the plan
          </button>
        )}
        {sheet !== undefined && <UnitsSwitch />}
      </div>
    </header>
  )
}
