import { useEffect, useState } from 'preact/hooks'
import type { Comparison } from '../../door/answers.ts'
import type { Files } from '../../door/protocol.ts'
import type { OpenSheet } from '../../state/app.ts'
import { familyOf, firstBeside, type Relative } from '../../state/family.ts'
import '../../style/answers.css'
import { addressOf } from '../address.ts'
import { useApp } from '../context.ts'
import { Answered } from './Answered.tsx'
import { ChangesHere } from './ChangesHere.tsx'
import { ComparedLines } from './ComparedLines.tsx'
import { ComparedOn } from './ComparedOn.tsx'
import { TakeScenario } from './TakeScenario.tsx'
import { useAsk } from './useAsk.ts'

/** How many sheets may be set beside the open one. */
const most = 3

/** The open sheet beside others of its family: how they come out over the same seasons, by how much, why, and where the answer turns. */
export function SideBySide({ sheet }: { sheet: OpenSheet }) {
  const app = useApp()
  const family = familyOf(sheet, app.shelf.value ?? [], app.kept.value)
  const [picked, pick] = useState<readonly string[]>(() => firstBeside(sheet, family))
  const files = useFiles(sheet)
  const beside = picked.filter((name) => family.some((relative) => relative.name === name))
  const question = files === undefined || beside.length === 0 ? undefined : { with: beside, files }
  const compared = useAsk<Comparison>('compare', question)
  return (
    <section class="answer-page side-by-side" aria-labelledby="page-title">
      <h2 id="page-title">Side by side</h2>
      <p class="page-lede">The sheets live through the same seasons, so that what differs is the plan and not the weather.</p>
      <TakeScenario />
      {sheet.view.from && <ChangesHere sheet={sheet} files={files} />}
      {family.length === 0 ? (
        <p>There is no other sheet of this family yet. Take a scenario from this one, change in it what should differ, and come back.</p>
      ) : (
        <BesideWhich title={sheet.view.title} family={family} beside={beside} onPick={pick} />
      )}
      {question !== undefined && (
        <Answered asked={compared} waiting="The sheets are">
          {(comparison) => (
            <>
              <p class="told">{comparison.paragraph}</p>
              <ComparedLines comparison={comparison} />
              <ComparedOn sheet={sheet} comparison={comparison} beside={question} />
            </>
          )}
        </Answered>
      )}
    </section>
  )
}

/** The texts of all sheets there are to set beside the open one, gathered anew when it or what is kept changes. */
function useFiles(sheet: OpenSheet): Files | undefined {
  const app = useApp()
  const [files, setFiles] = useState<Files | undefined>(undefined)
  const kept = app.kept.value
  const shelf = app.shelf.value
  useEffect(() => {
    let mine = true
    void app.filesAtHand().then((found) => mine && setFiles(found))
    return () => {
      mine = false
    }
  }, [app, kept, shelf, sheet.view.source])
  return files
}

interface WhichProps {
  title: string
  family: readonly Relative[]
  beside: readonly string[]
  onPick: (names: readonly string[]) => void
}

function BesideWhich({ title, family, beside, onPick }: WhichProps) {
  return (
    <fieldset class="beside-which">
      <legend>Beside “{title}”</legend>
      {family.map((relative) => {
        const on = beside.includes(relative.name)
        return (
          <div key={relative.name}>
            <label>
              <input
                type="checkbox"
                checked={on}
                disabled={!on && beside.length >= most}
                onChange={() => onPick(on ? beside.filter((name) => name !== relative.name) : [...beside, relative.name])}
              />
              <span>{relative.title}</span>
            </label>{' '}
            <a href={addressOf(relative.name)} aria-label={`Open ${relative.title}`}>open</a>
          </div>
        )
      })}
      {beside.length >= most && <p class="hint">Four at once is the most that can be read.</p>}
    </fieldset>
  )
}
