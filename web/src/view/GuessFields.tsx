import type { Guess } from '../door/protocol.ts'
import { NumberField } from './NumberField.tsx'

interface Props {
  label: string
  guess: Guess | undefined
  shape: string | undefined
  onGuess: (guess: Guess) => void
}

const parts = ['low', 'likely', 'high'] as const

/** A guess in its three numbers. Only an unusual shape is named. */
export function GuessFields({ label, guess, shape, onGuess }: Props) {
  if (guess === undefined) return null
  return (
    <span class="guess" role="group" aria-label={label}>
      {parts.map((part) => (
        <span key={part} class={`part ${part}`}>
          <span class="part-word" aria-hidden="true">
            {part}
          </span>
          <NumberField label={`${label}, ${part}`} value={guess[part]} onValue={(value) => onGuess({ ...guess, [part]: value })} />
        </span>
      ))}
      {shape && <span class="kind-word">{shape}</span>}
    </span>
  )
}
