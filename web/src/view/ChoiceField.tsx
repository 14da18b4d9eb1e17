import { useRef } from 'preact/hooks'
import type { Named } from '../door/protocol.ts'

interface Props {
  label: string
  chosen: string | undefined
  among: readonly Named[]
  onChoose: (id: string) => void
}

/** A choice among named things. Escape goes back to what was chosen before. */
export function ChoiceField({ label, chosen, among, onChoose }: Props) {
  const entered = useRef(chosen)
  const known = among.some((name) => name.id === chosen)
  return (
    <select
      class="choice"
      tabIndex={-1}
      aria-label={label}
      value={chosen}
      onFocus={() => (entered.current = chosen)}
      onChange={(event) => onChoose(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && entered.current !== undefined && entered.current !== chosen) onChoose(entered.current)
      }}
    >
      {!known && chosen !== undefined && <option value={chosen}>{chosen}</option>}
      {among.map((name) => (
        <option key={name.id} value={name.id}>
          {name.label}
        </option>
      ))}
    </select>
  )
}
