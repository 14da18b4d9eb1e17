import { plot, type PlotOptions } from '@observablehq/plot'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'

interface Props {
  /** What the picture shows, for those who do not see it. The same numbers stand in a table beside it. */
  label: string
  /** The picture at a width in pixels. */
  draw: (width: number) => PlotOptions
}

/** A picture drawn by Observable Plot, as wide as there is room for. */
export function PlotFigure({ label, draw }: Props) {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const element = box.current
    if (element === null) return
    setWidth(Math.floor(element.clientWidth))
    const observer = new ResizeObserver(() => setWidth(Math.floor(element.clientWidth)))
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  useEffect(() => {
    if (box.current === null || width === 0) return
    const drawn = plot({ className: 'plot', ...draw(width), width })
    // The content policy admits no style of the picture's own; ours is in the page's.
    for (const style of drawn.querySelectorAll('style')) style.remove()
    // The picture has one label; words on its parts, which have no role of their own, are not allowed beside it.
    for (const part of drawn.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label')
    drawn.setAttribute('role', 'img')
    drawn.setAttribute('aria-label', label)
    box.current.replaceChildren(drawn)
  }, [draw, label, width])
  return <div ref={box} class="plot-figure" />
}
