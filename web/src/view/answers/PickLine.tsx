import { grouped, type Pick } from '../../state/lines.ts'

interface Props {
  label: string
  picks: readonly Pick[]
  picked: string | undefined
  onPick: (id: string) => void
}

/** Picks one of a sheet's lines, by chapter. */
export function PickLine({ label, picks, picked, onPick }: Props) {
  return (
    <label class="pick">
      <span>{label}</span>
      <select class="choice" value={picked} onChange={(event) => onPick(event.currentTarget.value)}>
        {grouped(picks).map(([group, lines]) => (
          <optgroup key={group} label={group}>
            {lines.map((line) => (
              <option key={line.id} value={line.id}>
                {line.label}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </label>
  )
}
