import type { Span } from '../door/protocol.ts'

/** A formula's text cut in three at a span. */
export interface Cut {
  before: string
  marked: string
  after: string
}

/**
 * Cuts a text at a span counted in code points. A span beyond the text is
 * drawn back into it; an empty one leaves `marked` empty, which the page shows
 * as a gap.
 */
export function cutAt(text: string, span: Span): Cut {
  const points = Array.from(text)
  const from = Math.min(Math.max(span.from, 0), points.length)
  const to = Math.min(Math.max(span.to, from), points.length)
  return {
    before: points.slice(0, from).join(''),
    marked: points.slice(from, to).join(''),
    after: points.slice(to).join(''),
  }
}
