import { readNumber, writeNumber } from '../state/numbers.ts'
import { TypedField } from './TypedField.tsx'

interface Props {
  label: string
  value: number | undefined
  onValue: (value: number) => void
  describedBy?: string
}

/** A field for one number, given in the unit the line was written in. */
export function NumberField({ label, value, onValue, describedBy }: Props) {
  return (
    <TypedField
      label={label}
      text={writeNumber(value)}
      read={readNumber}
      wanted="a number"
      onRead={onValue}
      describedBy={describedBy}
    />
  )
}
