import type { Caution } from '../door/protocol.ts'

/** A caution with its source. The word stands before it, so that nothing hangs on colour. */
export function CautionNote({ caution }: { caution: Caution }) {
  return (
    <p class="caution">
      <strong>Caution.</strong> {caution.text}
      {caution.source && <cite> From: {caution.source}</cite>}
    </p>
  )
}
