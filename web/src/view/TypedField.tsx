import { useId, useState } from 'preact/hooks'
import type { Scrub } from './useScrub.ts'

interface Props<T> {
  label: string
  /** What stands in the sheet, as text. */
  text: string
  /** Makes sense of what was typed, or undefined. */
  read: (typed: string) => T | undefined
  /** What is wanted, for the message when no sense can be made of it. */
  wanted: string
  onRead: (value: T) => void
  describedBy?: string | undefined
  long?: boolean
  /** Moves the number by arrow keys, when it can be moved. */
  scrub?: Scrub
}

const fewSteps = 1
const manySteps = 10

/**
 * A field that takes what is typed as soon as it makes sense, leaves the
 * person's own text alone while they are in it, and goes back to what stood
 * there before on Escape.
 */
export function TypedField<T>({ label, text, read, wanted, onRead, describedBy, long = false, scrub }: Props<T>) {
  const [typed, setTyped] = useState<string | undefined>(undefined)
  const [entered, setEntered] = useState('')
  const trouble = useId()
  const senseless = typed !== undefined && read(typed) === undefined
  const shown = typed ?? text

  const take = (next: string): void => {
    setTyped(next)
    const value = read(next)
    if (value !== undefined) onRead(value)
  }
  const goBack = (): void => {
    if (typed !== undefined && typed !== entered) take(entered)
    setTyped(undefined)
  }
  return (
    <span class={long ? 'field long' : 'field'}>
      <input
        type="text"
        inputMode={long || shown.startsWith('-') ? 'text' : 'decimal'}
        autocomplete="off"
        spellcheck={false}
        tabIndex={-1}
        aria-label={label}
        aria-invalid={senseless}
        aria-describedby={senseless ? trouble : describedBy}
        size={long ? 24 : Math.min(Math.max(shown.length, 3), 12)}
        value={shown}
        onFocus={() => setEntered(text)}
        onInput={(event) => take(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Escape') {
            scrub?.letGo()
            goBack()
          }
          if (scrub === undefined || event.altKey || !upOrDown(event.key)) return
          event.preventDefault()
          setTyped(undefined)
          scrub.by((event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? manySteps : fewSteps))
        }}
        onKeyUp={(event) => {
          if (upOrDown(event.key)) scrub?.take()
        }}
        onBlur={() => {
          scrub?.take()
          setTyped(undefined)
        }}
      />
      {senseless && (
        <span class="senseless" id={trouble} role="alert">
          {typed.trim() === '' ? `${wanted} is wanted here` : `“${typed}” is not ${wanted}`}
        </span>
      )}
    </span>
  )
}

function upOrDown(key: string): boolean {
  return key === 'ArrowUp' || key === 'ArrowDown'
}
