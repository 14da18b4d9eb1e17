import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'

/** Whether an element has more in it than it shows, so that it must be reachable by key to be scrolled. */
export function useScrolls(element: RefObject<HTMLElement | null>): boolean {
  const [scrolls, set] = useState(false)
  useLayoutEffect(() => {
    const box = element.current
    if (box === null) return
    const look = (): void => set(getComputedStyle(box).overflowY === 'auto' && box.scrollHeight > box.clientHeight)
    const observer = new ResizeObserver(look)
    observer.observe(box)
    for (const child of box.children) observer.observe(child)
    return () => observer.disconnect()
  })
  return scrolls
}
