import { effect } from '@preact/signals'
import type { TypedSlip } from '../keep/typed.ts'
import type { App } from './app.ts'

/**
 * Keeps a slip of what is typed and not yet kept in the sheet, and puts what
 * an earlier page of this window left on its slip into the sheet once it is
 * open again.
 */
export function keepTyped(app: Pick<App, 'sheet' | 'asked' | 'ledger' | 'edit'>, slip: TypedSlip): void {
  let left = slip.take()
  let written = false
  effect(() => {
    const name = app.sheet.value?.name
    const asked = app.asked.value
    const unkept = app.ledger.unkept
    if (name !== undefined && asked.size > 0) {
      slip.write(name, asked)
      written = true
    } else if (written && !unkept) {
      slip.clear()
      written = false
    }
  })
  effect(() => {
    if (left === undefined || app.sheet.value?.name !== left.name) return
    const { edits } = left
    left = undefined
    // Not within the effect, which would then follow what it changes.
    queueMicrotask(() => edits.forEach((edit) => app.edit(edit)))
  })
}
