import { useEffect, useRef, useState } from 'preact/hooks'
import { GuessCurve } from '../chart/GuessCurve.tsx'
import type { Guess, GuessShape, LineView } from '../door/protocol.ts'
import { useApp } from './context.ts'
import { NumberField } from './NumberField.tsx'
import { useAsking } from './useAsking.ts'

/** In how many seasons of 10 a person may say a guess would hold. A sheet itself means 8. */
const sharesOffered = [5, 6, 7, 8, 9] as const
const usual = 8

type Numbers = Partial<Guess>

/** Both ends are asked for before the middle: who names the likely number first keeps too near to it. */
const questions = [
  { part: 'low', ask: 'In a low season, how little?' },
  { part: 'high', ask: 'In a high season, how much?' },
  { part: 'likely', ask: 'And what, if as often above as below?' },
] as const

/** Asks for a guess in the order that leads to a good one, and shows what it would mean before it goes into the sheet. */
export function GuessEditor({ line, label }: { line: LineView; label: string }) {
  const app = useApp()
  const begin: Numbers = line.guess ?? (line.is === undefined ? {} : { likely: line.is })
  const [numbers, setNumbers] = useState<Numbers>(begin)
  const [inside, setInside] = useState<number>(usual)
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => box.current?.querySelector('input')?.focus(), [])

  const { low, likely, high } = numbers
  const whole = low !== undefined && likely !== undefined && high !== undefined
  const asked = useAsking<GuessShape>('shape', whole ? { about: line.id, low, likely, high, inside } : undefined)
  const shape = whole ? asked.answer : undefined
  const take = (guess: Guess): void => {
    app.edit({ about: line.id, set: { guess } })
    app.editing.slip.value = undefined
  }
  const use = (guess: Guess): void => {
    setNumbers(guess)
    setInside(usual)
  }
  return (
    <div ref={box} class="slip guess-editor" role="group" aria-label={`Think ${label} over`}>
      <div class="asks">
        {questions.map(({ part, ask }) => (
          <label key={part}>
            <span class="ask">{ask}</span>
            <NumberField label={`${label}, ${part} (${ask})`} value={numbers[part]} onValue={(value) => setNumbers((was) => ({ ...was, [part]: value }))} />
            {line.unit !== '1' && <span class="ask-unit">{line.unit}</span>}
          </label>
        ))}
        {line.shape === undefined && <Inside chosen={inside} onChoose={setInside} label={label} />}
      </div>
      <div class="told" aria-live="polite">
        {shape?.guess !== undefined && low !== undefined && high !== undefined && (
          <>
            <GuessCurve curve={shape.curve} marks={{ ...shape.guess, low, high }} says={shape.says} />
            <p>{shape.says}</p>
            {(shape.guess.low !== low || shape.guess.high !== high) && (
              <p class="holds">
                The sheet will hold {shape.guess.low}, {shape.guess.likely} and {shape.guess.high}, the same guess for 8 seasons of 10.
              </p>
            )}
          </>
        )}
        {shape?.message !== undefined && (
          <div class="diagnosis error">
            <p>
              <strong>Does not fit: </strong>
              {shape.message}
              {shape.hint && <span class="hint"> — {shape.hint}</span>}
            </p>
            {shape.nearest !== undefined && <Nearest nearest={shape.nearest} onUse={use} />}
          </div>
        )}
        {asked.trouble && <p class="senseless">{asked.trouble.text}</p>}
      </div>
      <p class="slip-doings">
        {shape?.guess !== undefined && (
          <button type="button" tabIndex={-1} onClick={() => shape.guess && take(shape.guess)}>
            Put it in the sheet
          </button>
        )}
        <button type="button" tabIndex={-1} onClick={() => (app.editing.slip.value = undefined)}>
          Leave it as it was
        </button>
      </p>
    </div>
  )
}

function Inside({ chosen, label, onChoose }: { chosen: number; label: string; onChoose: (inside: number) => void }) {
  return (
    <fieldset class="inside-asked">
      <legend>In how many seasons of 10 would it fall between the low and the high?</legend>
      {sharesOffered.map((share) => (
        <label key={share}>
          <input type="radio" name={`inside-${label}`} tabIndex={-1} value={share} checked={chosen === share} onChange={() => onChoose(share)} />
          <span>{share}</span>
        </label>
      ))}
    </fieldset>
  )
}

function Nearest({ nearest, onUse }: { nearest: Guess; onUse: (guess: Guess) => void }) {
  const { low, likely, high } = nearest
  return (
    <p>
      The nearest guess that works is {low}, {likely} and {high}.{' '}
      <button type="button" tabIndex={-1} onClick={() => onUse(nearest)}>
        Use that
      </button>
    </p>
  )
}
