import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import type { Explanation } from '../../door/answers.ts'
import '../../style/answers.css'
import { useApp } from '../context.ts'
import { Answered } from './Answered.tsx'
import { StepTree } from './StepTree.tsx'
import { useAsk } from './useAsk.ts'

const seasons = [
  { season: 'likely', label: 'at the likely numbers' },
  { season: 'middle', label: 'in the middle season' },
  { season: 'low', label: 'in a 1-in-10 low season' },
  { season: 'high', label: 'in a 1-in-10 high season' },
] as const

/** One number taken back to the guesses it came from, over the page. Escape puts it away. */
export function ExplainDialog({ id }: { id: string }) {
  const app = useApp()
  const dialog = useRef<HTMLDialogElement>(null)
  const [season, setSeason] = useState<string>('likely')
  const asked = useAsk<Explanation>('explain', { id, season, depth: 12 })
  const answer = app.answers.value.get(id)
  useLayoutEffect(() => {
    const element = dialog.current
    if (element === null || element.open) return
    element.showModal()
    return () => element.close()
  }, [])
  const page = app.page.value
  const first = useRef(page)
  useEffect(() => {
    if (page !== first.current) app.explaining.value = undefined
  }, [app, page])
  return (
    <dialog
      ref={dialog}
      class="explain"
      aria-labelledby="explain-title"
      onClose={() => (app.explaining.value = undefined)}
      onClick={(event) => {
        // The dialog's own box is filled by its parts: a click on itself is one beside it.
        if (event.target === dialog.current) dialog.current?.close()
      }}
    >
      <div class="explain-leaf">
        <header>
          <h2 id="explain-title">{answer?.label ?? id}: how it comes to this</h2>
          <button type="button" onClick={() => dialog.current?.close()}>
            Put away
          </button>
        </header>
        {answer?.kind !== 'choose' && (
          <fieldset class="units seasons">
            <legend>Worked</legend>
            {seasons.map((one) => (
              <label key={one.season}>
                <input type="radio" name="explained-season" value={one.season} checked={season === one.season} onChange={() => setSeason(one.season)} />
                <span>{one.label}</span>
              </label>
            ))}
          </fieldset>
        )}
        <Answered asked={asked} waiting="The way to it is">
          {(explanation) => (
            <>
              <p class="explain-where">Worked {explanation.where}.</p>
              <StepTree key={`${explanation.tree.id} ${explanation.where}`} step={explanation.tree} />
            </>
          )}
        </Answered>
      </div>
    </dialog>
  )
}
