import { useState } from 'preact/hooks'
import { Mark, plainStorage } from '../keep/marks.ts'
import { newAddress } from './address.ts'

/** On a first visit: what one is looking at, to be put away for good. */
export function LookingAt() {
  const [mark] = useState(() => new Mark(plainStorage('localStorage'), 'looked-at'))
  const [shown, setShown] = useState(!mark.made)
  if (!shown) return null
  return (
    <aside class="looking-at" aria-labelledby="looking-at">
      <h2 id="looking-at">What you are looking at</h2>
      <p>
        A household’s plan for one season, a line for each number. Where they are not sure they give a low, a likely and
        a high; the sheet lives through thousands of seasons and says under <strong>The season in short</strong> what
        falls where.
      </p>
      <p>
        Change any number, or <strong>What we burn</strong>, and watch. The sheet as it was is always a click away. Then{' '}
        <a href={newAddress}>make one of your own</a> from eight questions.
      </p>
      <button
        type="button"
        onClick={() => {
          mark.make()
          setShown(false)
        }}
      >
        Put this away
      </button>
    </aside>
  )
}
