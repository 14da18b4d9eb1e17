import type { Guess } from '../door/protocol.ts'
import type { Limits } from '../state/scrub.ts'
import { NumberField } from './NumberField.tsx'

interface Props {
  label: string
  guess: Guess | undefined
  shape: string | undefined
  /** The line's own floor and ceiling. */
  limits: Limits
  onGuess: (guess: Guess) => void
  onTry: (guess: Guess) => void
  onTake: (guess: Guess) => void
  onLetGo: () => void
  /** Opens the questions that lead to a guess; undefined where there is no room for them. */
  onThink: (() => void) | undefined
  thinking: boolean
}

const parts = ['low', 'likely', 'high'] as const

/** A guess in its three numbers, each of which keeps its place beside the others as it is dragged. Only an unusual shape is named. */
export function GuessFields({ label, guess, shape, limits, onGuess, onTry, onTake, onLetGo, onThink, thinking }: Props) {
  if (guess === undefined) return null
  const between: Record<(typeof parts)[number], Limits> = {
    low: { low: limits.low, high: guess.likely },
    likely: { low: guess.low, high: guess.high },
    high: { low: guess.likely, high: limits.high },
  }
  return (
    <span class="guess" role="group" aria-label={label}>
      {parts.map((part) => {
        const withPart = (value: number): Guess => ({ ...guess, [part]: value })
        return (
          <span key={part} class={`part ${part}`}>
            <span class="part-word" aria-hidden="true">
              {part}
            </span>
            <NumberField
              label={`${label}, ${part}`}
              value={guess[part]}
              limits={between[part]}
              onValue={(value) => onGuess(withPart(value))}
              onTry={(value) => onTry(withPart(value))}
              onTake={(value) => onTake(withPart(value))}
              onLetGo={onLetGo}
            />
          </span>
        )
      })}
      {shape && <span class="kind-word">{shape}</span>}
      {onThink && (
        <button type="button" class="think" tabIndex={-1} aria-expanded={thinking} aria-label={`think it over: ${label}`} onClick={onThink}>
          think it over
        </button>
      )}
    </span>
  )
}
