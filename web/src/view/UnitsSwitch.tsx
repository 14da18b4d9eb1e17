import type { System } from '../door/protocol.ts'
import { useApp } from './context.ts'

const systems: readonly { system: System; label: string }[] = [
  { system: 'as-written', label: 'as written' },
  { system: 'customary', label: 'US customary' },
  { system: 'metric', label: 'metric' },
]

/** Chooses the units that results are shown in. The sheet's own numbers stay as they were written. */
export function UnitsSwitch() {
  const app = useApp()
  return (
    <fieldset class="units">
      <legend>Results in</legend>
      {systems.map(({ system, label }) => (
        <label key={system}>
          <input
            type="radio"
            name="system"
            value={system}
            checked={app.system.value === system}
            onChange={() => app.showIn(system)}
          />
          <span>{label}</span>
        </label>
      ))}
    </fieldset>
  )
}
