import { useEffect, useState } from 'preact/hooks'
import type { OpenSheet } from '../state/app.ts'
import { madeFrom } from '../state/questions.ts'
import { addressOf } from './address.ts'
import { AnswerPage } from './answers/AnswerPage.tsx'
import { PageLinks } from './answers/PageLinks.tsx'
import { CautionNote } from './CautionNote.tsx'
import { Chapter } from './Chapter.tsx'
import { useApp } from './context.ts'
import { Diagnosis } from './Diagnosis.tsx'
import { FunctionList } from './FunctionList.tsx'
import { LookingAt } from './LookingAt.tsx'
import { SeasonPanel, SeasonTold } from './SeasonPanel.tsx'

/** One open sheet: what it is, the season in short, and its chapters. */
export function SheetPage({ sheet }: { sheet: OpenSheet }) {
  const app = useApp()
  const { view } = sheet
  const base = app.shelf.value?.find((entry) => entry.file === view.from)
  const beside = app.beside.value
  const page = app.page.value
  return (
    <article class="sheet">
      {sheet.name === madeFrom && <LookingAt />}
      <header class="title-page">
        <h1>{view.title}</h1>
        {view.about && <p class="about">{view.about}</p>}
        {view.from && (
          <p class="taken-from">
            Taken from {base === undefined ? view.from : <a href={addressOf(base.file)}>{base.title}</a>}, with changes.
          </p>
        )}
        {sheet.shipped && sheet.changed && (
          <p class="changed">
            Your changes are kept in this browser.{' '}
            <button type="button" onClick={() => confirm('Put your changes aside for good?') && void app.startAgain(sheet.name)}>
              Start again from the shipped sheet
            </button>
          </p>
        )}
      </header>
      <PageLinks name={sheet.name} />
      {beside !== undefined && beside.atTop.length > 0 && (
        <section class="at-top" aria-label="What does not fit in the sheet">
          {beside.atTop.map((found, i) => (
            <Diagnosis key={i} found={found} />
          ))}
        </section>
      )}
      {page === 'sheet' ? <Spread sheet={sheet} /> : <AnswerPage page={page} sheet={sheet} />}
    </article>
  )
}

/** How many chapters are drawn before all of them are: more than fill any window. */
const inSight = 2

/** The sheet itself: the season in short, always in sight, and its chapters. */
function Spread({ sheet: { view } }: { sheet: OpenSheet }) {
  const app = useApp()
  const beside = app.beside.value
  const [whole, setWhole] = useState(false)
  // What is in sight first: the rest of a long sheet would keep the season waiting.
  useEffect(() => {
    const drawn = setTimeout(() => setWhole(true))
    return () => clearTimeout(drawn)
  }, [])
  return (
    <div class="spread">
      <SeasonPanel />
      <div class="chapters">
        <SeasonTold />
        {view.chapters.slice(0, whole ? undefined : inSight).map((chapter, i) => (
          <Chapter key={i} chapter={chapter} number={i + 1} />
        ))}
        {beside !== undefined && beside.general.length > 0 && (
          <section class="general-cautions" aria-label="Cautions">
            {beside.general.map((caution, i) => (
              <CautionNote key={i} caution={caution} />
            ))}
          </section>
        )}
        <FunctionList />
      </div>
    </div>
  )
}
