import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'

interface Props {
  label: string
  formula: string
  onFormula: (formula: string) => void
}

/** How long a person may pause before a formula in the making is tried: half-written ones are not worth a diagnostic. */
const pause = 350

/** A formula, shown as text until it is entered, then in a field of its own height. */
export function FormulaField({ label, formula, onFormula }: Props) {
  const [entered, setEntered] = useState<string | undefined>(undefined)
  if (entered === undefined) {
    return (
      <button type="button" class="formula" tabIndex={-1} aria-label={`${label}, formula: ${formula}`} onClick={() => setEntered(formula)}>
        <code>{formula}</code>
      </button>
    )
  }
  return <OpenFormula label={label} entered={entered} onFormula={onFormula} onLeave={() => setEntered(undefined)} />
}

interface OpenProps {
  label: string
  entered: string
  onFormula: (formula: string) => void
  onLeave: () => void
}

function OpenFormula({ label, entered, onFormula, onLeave }: OpenProps) {
  const field = useRef<HTMLTextAreaElement>(null)
  const sent = useRef(entered)
  const left = useRef(false)
  const [text, setText] = useState(entered)

  const send = (next: string): void => {
    // A formula is one line of the sheet file, however it is typed.
    const line = next.replaceAll(/\s*\n\s*/g, ' ').trim()
    if (line === '' || line === sent.current) return
    sent.current = line
    onFormula(line)
  }
  const leaveWith = (last: string): void => {
    // Leaving moves the focus, and so would come round here again.
    if (left.current) return
    left.current = true
    send(last)
    onLeave()
  }
  // Before the next key can come, so that it lands here.
  useLayoutEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])
  useEffect(() => {
    const timer = setTimeout(() => send(text), pause)
    return () => clearTimeout(timer)
  }, [text])
  useLayoutEffect(() => {
    const area = field.current
    if (area === null) return
    area.style.height = 'auto'
    area.style.height = `${area.scrollHeight + 2}px`
  }, [text])

  return (
    <textarea
      ref={field}
      class="formula"
      rows={1}
      tabIndex={-1}
      spellcheck={false}
      autocomplete="off"
      aria-label={`${label}, formula`}
      value={text}
      onInput={(event) => setText(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Escape') leaveWith(entered)
        if (event.key === 'Enter') leaveWith(text)
      }}
      onBlur={() => leaveWith(text)}
    />
  )
}
