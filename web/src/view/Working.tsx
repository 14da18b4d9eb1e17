import type { Guess, LineView } from '../door/protocol.ts'
import { takeTried } from '../state/take.ts'
import { ChoiceField } from './ChoiceField.tsx'
import { useApp } from './context.ts'
import { FormulaField } from './FormulaField.tsx'
import { GuessFields } from './GuessFields.tsx'
import { NumberField } from './NumberField.tsx'
import { RecordsField } from './RecordsField.tsx'

interface Props {
  line: LineView
  /** What the fields are called for a screen reader. */
  label: string
}

/** How a line is set down, in fields that change it: by its kind. What was typed and is on its way counts already. */
export function Working({ line, label }: Props) {
  const app = useApp()
  const now = { ...line, ...app.asked.value.get(line.id) }
  const about = line.id
  const limits = { low: line.floor, high: line.ceiling }
  const onLetGo = (): void => app.letGo(about)
  switch (line.kind) {
    case 'is':
      return (
        <NumberField
          label={label}
          value={now.is}
          limits={limits}
          onValue={(is) => app.edit({ about, set: { is } })}
          onTry={(is) => app.try(about, { is })}
          onTake={(is) => void takeTried(app, about, { is })}
          onLetGo={onLetGo}
        />
      )
    case 'guess': {
      const slip = app.editing.slip.value
      return (
        <GuessFields
          label={label}
          guess={now.guess}
          shape={line.shape}
          limits={limits}
          onGuess={(guess: Guess) => app.edit({ about, set: { guess } })}
          onTry={(guess: Guess) => app.try(about, { guess })}
          onTake={(guess: Guess) => void takeTried(app, about, { guess })}
          onLetGo={onLetGo}
          onThink={about.includes('.') ? undefined : () => app.editing.toggle({ about, what: 'guess' })}
          thinking={slip?.about === about && slip.what === 'guess'}
        />
      )
    }
    case 'records':
      return <RecordsField label={label} records={now.records} onRecords={(records) => app.edit({ about, set: { records } })} />
    case 'choose':
      return <ChoiceField label={label} chosen={now.choose} among={line.among ?? []} onChoose={(choose) => app.edit({ about, set: { choose } })} />
    case 'formula':
      return <FormulaField label={label} formula={now.formula ?? ''} onFormula={(formula) => app.edit({ about, set: { formula } })} />
  }
}
