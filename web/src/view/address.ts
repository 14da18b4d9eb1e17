import type { App } from '../state/app.ts'
import { type PageName, pageNames } from '../state/pages.ts'

const before = '#sheet/'

/** The address, within the page, of a sheet by file name, and of one of its pages. */
export function addressOf(name: string, page: PageName = 'sheet'): string {
  return before + encodeURIComponent(name) + (page === 'sheet' ? '' : `/${page}`)
}

/** The address of the list of sheets. */
export const shelfAddress = '#sheets'

/** The sheet an address names, or undefined for the list. A name that cannot be decoded names no sheet. */
export function sheetIn(address: string): string | undefined {
  if (!address.startsWith(before)) return undefined
  try {
    return decodeURIComponent(address.slice(before.length).split('/')[0] ?? '')
  } catch {
    return undefined
  }
}

/** The page of the open sheet that an address names: the sheet itself when it names none there is. */
export function pageIn(address: string): PageName {
  if (!address.startsWith(before)) return 'sheet'
  const named = address.slice(before.length).split('/')[1]
  return pageNames.find((page) => page === named) ?? 'sheet'
}

/**
 * Keeps what is open in step with the address, so that back, forward, reload
 * and a bookmark do what they should. A bare address goes on with the sheet
 * that was changed last, so that coming back loses nothing.
 */
export function followAddress(app: App): void {
  const last = app.kept.peek()[0]
  if (location.hash === '' && last !== undefined) history.replaceState(null, '', addressOf(last.name))
  const follow = (): void => {
    const name = sheetIn(location.hash)
    app.page.value = pageIn(location.hash)
    if (name === undefined) app.close()
    else if (name !== app.sheet.peek()?.name) void app.openNamed(name)
  }
  addEventListener('hashchange', follow)
  follow()
}
