import type { ComponentChildren } from 'preact'
import type { Asked } from '../../state/latest.ts'

interface Props<T> {
  asked: Asked<T>
  /** What is being worked out, for the waiting line: "The prices are". */
  waiting: string
  children: (answer: T) => ComponentChildren
}

/** An answer once there is one; until then, that it is awaited, or why there is none. */
export function Answered<T>({ asked, waiting, children }: Props<T>) {
  const { answer, trouble, asking } = asked
  return (
    <div aria-busy={asking} class="answered">
      <p role="status" class={asking ? 'working-out' : 'unseen'}>
        {asking ? `${waiting} being worked out…` : ''}
      </p>
      {trouble !== undefined && (
        <p class="no-answer">
          <strong>No answer. </strong>
          {trouble.text}
          {trouble.hint !== undefined && <span class="hint"> — {trouble.hint}</span>}
        </p>
      )}
      {answer !== undefined && children(answer)}
    </div>
  )
}
