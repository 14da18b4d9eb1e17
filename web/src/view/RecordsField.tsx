import { readNumbers, writeNumbers } from '../state/numbers.ts'
import { TypedField } from './TypedField.tsx'

interface Props {
  label: string
  records: readonly number[] | undefined
  onRecords: (records: number[]) => void
}

/** A line's own past values, one after another in one field. */
export function RecordsField({ label, records, onRecords }: Props) {
  const count = records?.length ?? 0
  return (
    <span class="records">
      <span class="kind-word">{count} records</span>
      <TypedField
        label={`${label}, past values`}
        text={writeNumbers(records)}
        read={readNumbers}
        wanted="a list of numbers"
        onRead={onRecords}
        long
      />
    </span>
  )
}
