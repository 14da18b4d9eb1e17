import { useEffect } from 'preact/hooks'
import type { App } from '../state/app.ts'

/** Lets Ctrl+Z undo the sheet's last change and Ctrl+Shift+Z or Ctrl+Y do it again, wherever the person is on the page. */
export function useUndoKeys(app: App): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const way = wayOf(event)
      if (way === undefined || keepsItsOwn(event)) return
      event.preventDefault()
      leaveField()
      void app.step(way)
    }
    addEventListener('keydown', onKeyDown)
    return () => removeEventListener('keydown', onKeyDown)
  }, [app])
}

function wayOf({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): 'back' | 'forth' | undefined {
  if (!(ctrlKey || metaKey) || altKey) return undefined
  const pressed = key.toLowerCase()
  if (pressed === 'y' && !shiftKey) return 'forth'
  return pressed === 'z' ? (shiftKey ? 'forth' : 'back') : undefined
}

/** Whether the person is in a text whose changes are not the sheet's yet, and which keeps its own. */
function keepsItsOwn(event: KeyboardEvent): boolean {
  return event.composedPath().some((e) => e instanceof HTMLElement && (e.isContentEditable || e.matches('textarea, [data-own-undo]')))
}

/** A field shows what was typed into it until it is left, and so would hide what the undo brings back. */
function leaveField(): void {
  const field = document.activeElement
  const cell = field?.closest<HTMLElement>('[role=gridcell], [role=rowheader]')
  if (!(field instanceof HTMLInputElement)) return
  if (cell) cell.focus()
  else field.blur()
}
