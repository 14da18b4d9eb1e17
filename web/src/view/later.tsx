import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A component fetched when it is first shown, so that the first view of the page does not wait for it. */
export function later(fetchIt: () => Promise<ComponentType>): ComponentType {
  return function Later() {
    // Held in an object: a bare function would be taken for a change of state and called.
    const [here, setHere] = useState<{ Shown: ComponentType } | 'failed' | undefined>(undefined)
    useEffect(() => {
      fetchIt().then(
        (Shown) => setHere({ Shown }),
        () => setHere('failed'),
      )
    }, [])
    if (here === undefined) return <p class="waiting">On its way…</p>
    if (here === 'failed') return <p class="waiting">This part of the page could not be fetched. Reload to try again.</p>
    return <here.Shown />
  }
}
