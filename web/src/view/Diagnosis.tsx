import type { Diagnostic } from '../door/protocol.ts'
import { cutAt } from '../state/spans.ts'

const openings = { error: 'Does not fit: ', warning: 'Note: ', waits: 'Waits: ' } as const

interface Props {
  found: Diagnostic
  /** The formula the diagnostic's span is counted in, when it has one. */
  formula?: string | undefined
}

/** One thing found wrong: the formula with a mark under the place, what is wrong, and what to do. */
export function Diagnosis({ found, formula }: Props) {
  const where = whereOf(found)
  // A line that only waits is not itself wrong, and must not shout down the one that is.
  const tone = found.code === 'waits-for' ? 'waits' : found.severity
  return (
    <div class={`diagnosis ${tone}`} data-code={found.code}>
      {formula !== undefined && found.place.formula !== undefined && <MarkedFormula formula={formula} found={found} />}
      <p>
        <strong>{openings[tone]}</strong>
        {found.message}
        {found.seasons ? ` in ${count(found.seasons)} of ${count(found.of ?? 0)} seasons` : ''}
        {found.hint ? <span class="hint"> — {found.hint}</span> : null}
        {where && <span class="where"> ({where})</span>}
      </p>
    </div>
  )
}

function MarkedFormula({ formula, found }: { formula: string; found: Diagnostic }) {
  const { before, marked, after } = cutAt(formula, found.place.formula ?? { from: 0, to: 0 })
  return (
    <code class="marked-formula">
      {before}
      <mark class={marked === '' ? 'gap' : ''}>{marked === '' ? '\u00a0' : marked}</mark>
      {after}
    </code>
  )
}

/** Line and column, only for what is not shown beside a line of its own. */
function whereOf({ about, place }: Diagnostic): string {
  if (about || !place.line) return ''
  const at = place.column ? `line ${place.line}, column ${place.column}` : `line ${place.line}`
  return place.file ? `${place.file}, ${at}` : at
}

function count(n: number): string {
  return n.toLocaleString('en-US')
}
