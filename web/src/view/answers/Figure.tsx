import { useApp } from '../context.ts'

interface Props {
  id: string
  label: string
  /** The number as it is read. */
  shown: string
  /** Whether it stands in a grid, where arrow keys reach it and Tab does not. */
  inGrid?: boolean
}

/** A number that can be asked how it comes about. */
export function Figure({ id, label, shown, inGrid = false }: Props) {
  const app = useApp()
  return (
    <button
      type="button"
      class="figure"
      title="How it comes to this"
      aria-haspopup="dialog"
      aria-label={`${shown}: how ${label} comes to this`}
      {...(inGrid ? { tabIndex: -1 } : {})}
      onClick={() => (app.explaining.value = id)}
    >
      {shown}
    </button>
  )
}
