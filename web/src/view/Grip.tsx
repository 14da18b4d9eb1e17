import { useRef } from 'preact/hooks'
import type { Scrub } from './useScrub.ts'

/** Pixels a pointer must go before it counts as a drag. */
const slack = 3

/**
 * A handle to drag a number by, sideways. Readers of a screen have the arrow
 * keys in the field itself, so it is hidden from them.
 */
export function Grip({ scrub }: { scrub: Scrub }) {
  const start = useRef<number | undefined>(undefined)
  const dragging = useRef(false)
  const over = (): boolean => {
    const was = dragging.current
    start.current = undefined
    dragging.current = false
    return was
  }
  return (
    <span
      class="grip"
      aria-hidden="true"
      title="Drag sideways, or use the arrow keys in the field"
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.preventDefault()
        event.currentTarget.setPointerCapture(event.pointerId)
        start.current = event.clientX
      }}
      onPointerMove={(event) => {
        if (start.current === undefined) return
        const gone = event.clientX - start.current
        if (!dragging.current && Math.abs(gone) < slack) return
        dragging.current = true
        scrub.to(Math.round(gone))
      }}
      onPointerUp={() => over() && scrub.take()}
      onPointerCancel={() => over() && scrub.letGo()}
    >
      <svg viewBox="0 0 16 12" width={16} height={12}>
        <path d="M4 2L1 6l3 4M12 2l3 4-3 4M2 6h12" />
      </svg>
    </span>
  )
}
