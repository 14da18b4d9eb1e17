import type { ComponentChildren } from 'preact'

/** The numbers behind a picture, folded away below it. */
export function AsNumbers({ of, children }: { of: string; children: ComponentChildren }) {
  return (
    <details class="as-numbers">
      <summary>{of} as numbers</summary>
      {children}
    </details>
  )
}
