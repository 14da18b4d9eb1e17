import { useEffect } from 'preact/hooks'
import { useApp } from './context.ts'
import { Masthead } from './Masthead.tsx'
import { NoticeBar } from './NoticeBar.tsx'
import { SheetPage } from './SheetPage.tsx'
import { Shelf } from './Shelf.tsx'

/** The whole page: a masthead, and either the open sheet or the list of sheets. */
export function Page() {
  const app = useApp()
  const sheet = app.sheet.value
  const title = sheet === undefined ? 'Thawbook' : `${sheet.view.title} · Thawbook`
  useEffect(() => {
    document.title = title
  }, [title])
  return (
    <>
      <Masthead />
      <main>
        <NoticeBar />
        {sheet !== undefined ? <SheetPage sheet={sheet} /> : app.opening.value ? <p class="waiting">The sheet is being opened…</p> : <Shelf />}
      </main>
      <footer class="colophon">
        <p>Everything is reckoned in this browser. Nothing you write here is sent anywhere.</p>
      </footer>
    </>
  )
}
