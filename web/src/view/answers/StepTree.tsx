import { list, type Step } from '../../door/answers.ts'

/** One step of an explanation and, folded away below it, what it was worked from. */
export function StepTree({ step, deep = 0 }: { step: Step; deep?: number }) {
  const uses = list(step.uses)
  const head = (
    <span class="step-head">
      <span class="step-label">{step.label}</span> <strong class="figure">{step.shown}</strong>
      {step.drawn && <span class="step-drawn">{step.drawn}</span>}
    </span>
  )
  if (uses.length === 0 && !hasMore(step)) {
    return (
      <div class="step leaf">
        {head}
        {step.again && <span class="step-again">told in full above</span>}
      </div>
    )
  }
  return (
    <details class="step" open={deep < 1}>
      <summary>{head}</summary>
      <StepSaid step={step} />
      {uses.length > 0 && (
        <ul>
          {uses.map((use, i) => (
            <li key={i}>
              <StepTree step={use} deep={deep + 1} />
            </li>
          ))}
        </ul>
      )}
      {step.more && <p class="step-again">It goes deeper than is shown.</p>}
    </details>
  )
}

function hasMore({ formula, note, source, row }: Step): boolean {
  return [formula, note, source, row?.note, row?.source].some((said) => said !== undefined && said !== '')
}

function StepSaid({ step }: { step: Step }) {
  const { formula, worked, note, source, row } = step
  return (
    <div class="step-said">
      {formula && <code class="step-formula">{formula}</code>}
      {worked && worked !== formula && <p class="step-worked">{worked}</p>}
      {list(step.sides).map((side, i) => (
        <p key={i}>
          <code>{side.condition}</code> {side.holds ? 'holds' : 'does not hold'} ({side.worked}), so {side.took}.
        </p>
      ))}
      {list(step.conversions).map(({ shown }, i) => (
        <p key={i}>{shown}</p>
      ))}
      {list(step.functions).map((f) => (
        <p key={f.name}>
          <code>{f.name}</code>: {f.summary} <cite>{f.source}</cite>
        </p>
      ))}
      {note && <p class="line-note">{note}</p>}
      {row?.note && <p class="line-note">{row.note}</p>}
      {(source || row?.source) && <cite class="line-source">{source || row?.source}</cite>}
    </div>
  )
}
