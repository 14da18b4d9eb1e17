import type { FunctionComponent } from 'preact'
import type { OpenSheet } from '../../state/app.ts'
import type { PageName } from '../../state/pages.ts'
import { Later } from './Later.tsx'

interface Given {
  sheet: OpenSheet
}

type Load = () => Promise<FunctionComponent<Given>>

const loads: Readonly<Record<Exclude<PageName, 'sheet'>, Load>> = {
  'side-by-side': () => import('./SideBySide.tsx').then((m) => m.SideBySide),
  movers: () => import('./MoversPage.tsx').then((m) => m.MoversPage),
  prices: () => import('./PricesPage.tsx').then((m) => m.PricesPage),
  'lay-in': () => import('./LayInPage.tsx').then((m) => m.LayInPage),
  words: () => import('./WordsPage.tsx').then((m) => m.WordsPage),
}

/** One of a sheet's pages besides the sheet itself. */
export function AnswerPage({ page, sheet }: Given & { page: Exclude<PageName, 'sheet'> }) {
  // By the sheet's name, so that what was picked for one sheet is not asked of another.
  return <Later key={`${page} ${sheet.name}`} load={loads[page]} given={{ sheet }} />
}
