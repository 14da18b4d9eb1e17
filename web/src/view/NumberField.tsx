import { readNumber, writeNumber } from '../state/numbers.ts'
import type { Limits } from '../state/scrub.ts'
import { Grip } from './Grip.tsx'
import { TypedField } from './TypedField.tsx'
import { useScrub } from './useScrub.ts'

interface Props {
  label: string
  value: number | undefined
  onValue: (value: number) => void
  /** Told each number while it is dragged; without it a number is only typed. */
  onTry?: (value: number) => void
  /** Told the number a drag ended on. */
  onTake?: (value: number) => void
  onLetGo?: () => void
  limits?: Limits
  describedBy?: string
}

const nothing = (): void => undefined

/** A field for one number, given in the unit the line was written in. */
export function NumberField({ label, value, onValue, onTry, onTake = onValue, onLetGo = nothing, limits = {}, describedBy }: Props) {
  const scrub = useScrub({ value, limits, onTry: onTry ?? nothing, onTake, onLetGo })
  const moves = onTry !== undefined
  return (
    <span class={moves ? 'number moves' : 'number'}>
      <TypedField
        label={label}
        text={writeNumber(value)}
        read={readNumber}
        wanted="a number"
        onRead={onValue}
        describedBy={describedBy}
        {...(moves ? { scrub } : {})}
      />
      {moves && value !== undefined && <Grip scrub={scrub} />}
    </span>
  )
}
