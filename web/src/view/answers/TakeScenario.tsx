import { useState } from 'preact/hooks'
import { useApp } from '../context.ts'

/** Takes a scenario from the open sheet under a title the person gives it, and opens it. */
export function TakeScenario() {
  const app = useApp()
  const [title, setTitle] = useState('')
  const take = async (): Promise<void> => {
    if ((await app.takeScenario(title.trim())) === undefined) return
    app.notice.value = {
      tone: 'news',
      text: `“${title.trim()}” is open.`,
      hint: 'Change in it what should differ. All else follows the sheet it is taken from.',
    }
  }
  return (
    <form
      class="take-scenario"
      onSubmit={(event) => {
        event.preventDefault()
        if (title.trim() !== '') void take()
      }}
    >
      <label for="scenario-title">What if? Take a scenario from this sheet, and call it</label>
      <span class="field long">
        <input id="scenario-title" type="text" autocomplete="off" maxLength={80} placeholder="More taps" value={title} onInput={(event) => setTitle(event.currentTarget.value)} />
      </span>
      <button type="submit">Take the scenario</button>
    </form>
  )
}
