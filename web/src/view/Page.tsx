import { useEffect } from 'preact/hooks'
import { pageTitles } from '../state/pages.ts'
import { Explaining } from './answers/Explaining.tsx'
import { useApp, useShelving } from './context.ts'
import { later } from './later.tsx'
import { Masthead } from './Masthead.tsx'
import { NoticeBar } from './NoticeBar.tsx'
import { DropFile } from './OpenFile.tsx'
import { SheetPage } from './SheetPage.tsx'
import { Shelf } from './Shelf.tsx'
import { WindowNotices } from './WindowNotices.tsx'

const NewSheet = later(() => import('./NewSheet.tsx').then((m) => m.NewSheet))

/** The whole page: a masthead, and either the open sheet or the list of sheets. */
export function Page() {
  const app = useApp()
  const shelving = useShelving()
  const sheet = app.sheet.value
  const page = app.page.value
  const title = sheet === undefined ? 'Thawbook' : `${page === 'sheet' ? '' : `${pageTitles[page]} · `}${sheet.view.title} · Thawbook`
  useEffect(() => {
    document.title = title
  }, [title])
  return (
    <>
      <Masthead />
      <main>
        <NoticeBar />
        <WindowNotices />
        {sheet !== undefined ? <SheetPage sheet={sheet} /> : shelving.asking.value ? <NewSheet /> : app.opening.value ? <p class="waiting">The sheet is being opened…</p> : <Shelf />}
      </main>
      <Explaining />
      <footer class="colophon">
        <p>Everything is reckoned in this browser. Nothing you write here is sent anywhere.</p>
      </footer>
      <DropFile />
    </>
  )
}
