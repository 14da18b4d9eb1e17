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
        A household’s plan for one season: their trees, pan, fire, hours, jars and prices, each on a line. Where they do
        not know a number they give a low, a likely and a high, and the sheet lives through thousands of seasons with
        them. <strong>The season in short</strong> says what comes of it: the middle, and between what 8 seasons of 10 fall.
      </p>
      <p>
        Change any number and see what moves; try another fuel under <strong>What we burn</strong>. Nothing can be
        spoilt: the sheet as it was is always a click away. Then <a href={newAddress}>make one of your own</a> from eight
        questions.
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
