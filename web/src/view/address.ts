import { effect } from '@preact/signals'
import type { Mark } from '../keep/marks.ts'
import type { App } from '../state/app.ts'
import { type PageName, pageNames } from '../state/pages.ts'
import type { Shelving } from '../state/shelving.ts'

const before = '#sheet/'

/** The address, within the page, of a sheet by file name, and of one of its pages. */
export function addressOf(name: string, page: PageName = 'sheet'): string {
  return before + encodeURIComponent(name) + (page === 'sheet' ? '' : `/${page}`)
}

/** The address of the list of sheets. */
export const shelfAddress = '#sheets'

/** The address of the questions for a new sheet. */
export const newAddress = '#new'

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
export function followAddress(app: App, shelving: Shelving, visited: Mark): void {
  const start = app.kept.peek()[0]?.name
  visited.make()
  if (location.hash === '' && start !== undefined) history.replaceState(null, '', addressOf(start))
  const follow = (): void => {
    const name = sheetIn(location.hash)
    app.page.value = pageIn(location.hash)
    shelving.asking.value = location.hash === newAddress
    if (name === undefined) app.close()
    else if (name !== app.sheet.peek()?.name) void app.openNamed(name)
  }
  addEventListener('hashchange', follow)
  follow()
  nameInAddress(app)
}

/** Puts a sheet that came to be open by another way than its address (a file, a new one, a copy) into the address. */
function nameInAddress(app: App): void {
  let shown = app.sheet.peek()?.name
  effect(() => {
    const name = app.sheet.value?.name
    if (name === shown) return
    shown = name
    if (name === undefined || sheetIn(location.hash) === name) return
    history.pushState(null, '', addressOf(name))
    // No event tells of an address that was pushed.
    app.page.value = 'sheet'
  })
}
