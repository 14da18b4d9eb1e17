import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Kept, Spoilt } from '../keep/kept.ts'
import { addressOf } from './address.ts'
import { useShelving } from './context.ts'
import { saveAs } from './files.ts'

/** The person's own sheets, with what can be done to each. */
export function OwnSheets({ own }: { own: readonly Kept[] }) {
  return (
    <ul class="sheets">
      {own.map((kept) => (
        <OwnSheet key={kept.name} kept={kept} />
      ))}
    </ul>
  )
}

function OwnSheet({ kept }: { kept: Kept }) {
  const shelving = useShelving()
  const [naming, setNaming] = useState(false)
  return (
    <li>
      {naming ? <Naming kept={kept} onDone={() => setNaming(false)} /> : <a href={addressOf(kept.name)}>{kept.title}</a>}
      <p>
        From the file {kept.name}, {changedAt(kept)}.
      </p>
      <p class="sheet-doings">
        <button type="button" onClick={() => setNaming(true)} aria-label={`Rename ${kept.title}`}>
          Rename
        </button>
        <button type="button" onClick={() => void shelving.copy(kept.name, kept.title, kept.files)} aria-label={`Copy ${kept.title}`}>
          Copy
        </button>
        <button type="button" onClick={() => void shelving.take(kept.name, kept.title)} aria-label={`Take off the shelf: ${kept.title}`}>
          Take off the shelf
        </button>
      </p>
    </li>
  )
}

function Naming({ kept, onDone }: { kept: Kept; onDone: () => void }) {
  const shelving = useShelving()
  const [title, setTitle] = useState(kept.title)
  const input = useRef<HTMLInputElement>(null)
  // Before the next key can come, so that it lands here.
  useLayoutEffect(() => input.current?.select(), [])
  const rename = async (): Promise<void> => {
    const wanted = title.trim()
    if (wanted !== '' && wanted !== kept.title) await shelving.rename(kept, wanted)
    onDone()
  }
  return (
    <form
      class="renaming"
      onSubmit={(event) => {
        event.preventDefault()
        void rename()
      }}
    >
      <label class="field">
        <span class="unseen">New title for {kept.title}</span>
        <input type="text" value={title} ref={input} onInput={(event) => setTitle(event.currentTarget.value)} onKeyDown={(event) => event.key === 'Escape' && onDone()} />
      </label>
      <button type="submit">Call it that</button>
      <button type="button" onClick={onDone}>
        Leave it
      </button>
    </form>
  )
}

/** What is kept here and cannot be used: said, left alone, and its text given out. */
export function SpoiltSheets({ spoilt }: { spoilt: readonly Spoilt[] }) {
  const shelving = useShelving()
  return (
    <section aria-labelledby="spoilt-sheets">
      <h2 id="spoilt-sheets">Kept, but not readable here</h2>
      <ul class="sheets">
        {spoilt.map(({ name, why, text }) => (
          <li key={name}>
            <strong>{name}</strong>
            <p>
              {why === 'newer'
                ? 'A later Thawbook kept this in a way that this one does not know. It is left as it is for that one.'
                : 'What is kept under this name is damaged. It is left as it is.'}
            </p>
            <p class="sheet-doings">
              {text !== undefined && (
                <button type="button" onClick={() => saveAs(name, text)} aria-label={`Save its text to a file: ${name}`}>
                  Save its text to a file
                </button>
              )}
              <button type="button" onClick={() => void shelving.take(name, name)} aria-label={`Take off the shelf: ${name}`}>
                Take off the shelf
              </button>
            </p>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** When a sheet was last changed, in words. */
export function changedAt(kept: Kept): string {
  const when = new Date(kept.at)
  return `last changed ${when.toLocaleDateString('en-US', { day: 'numeric', month: 'long' })} at ${when.toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' })}`
}
