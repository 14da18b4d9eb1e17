import type { FunctionComponent } from 'preact'
import { useEffect, useState } from 'preact/hooks'

interface Props<P> {
  /** Fetches the part; called once, when it is first shown. */
  load: () => Promise<FunctionComponent<P>>
  /** What the part is given. */
  given: P
}

/** A part of the page that is fetched only when it is first shown, so that the first paint need not wait for it. */
export function Later<P extends object>({ load, given }: Props<P>) {
  const [part, setPart] = useState<{ Part?: FunctionComponent<P>; failed?: true }>({})
  useEffect(() => {
    let mine = true
    load().then(
      (Part) => mine && setPart({ Part }),
      () => mine && setPart({ failed: true }),
    )
    return () => {
      mine = false
    }
  }, [load])
  if (part.failed) return <p class="no-answer"><strong>No answer. </strong>This part of the page could not be fetched. Look at another and come back.</p>
  return part.Part === undefined ? <p class="waiting">One moment…</p> : <part.Part {...given} />
}
