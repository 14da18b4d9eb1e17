import type { RefObject } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { standsOtherwise } from '../state/ghost.ts'
import { useApp } from './context.ts'

/**
 * The outcomes in one line at the foot of a window that has no room for the
 * season beside the chapters, once the season itself is out of sight. It says
 * nothing that the season does not, so readers of a screen are spared it.
 */
export function SeasonAtFoot({ panel }: { panel: RefObject<HTMLElement | null> }) {
  const app = useApp()
  const [away, setAway] = useState(false)
  useEffect(() => {
    if (panel.current === null) return
    const observer = new IntersectionObserver(([entry]) => setAway(entry !== undefined && !entry.isIntersecting))
    observer.observe(panel.current)
    return () => observer.disconnect()
  }, [])
  const first = (app.reckoning.value?.lines ?? []).filter((answer) => answer.headline)
  if (!away || first.length === 0) return null
  return (
    <div class="at-foot" aria-hidden="true">
      {first.map((answer) => {
        const before = standsOtherwise(answer, app.editing.before.value?.get(answer.id))
        return (
          <span key={answer.id}>
            {answer.label} <b>{answer.shown.middle}</b>
            {before && <i> was {before.shown.middle}</i>}
          </span>
        )
      })}
    </div>
  )
}
