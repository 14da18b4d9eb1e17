import { render } from 'preact'
import { readAhead } from './door/ahead.ts'
import { compile, packedPays } from './door/compile.ts'
import { Door, type WorkerLike } from './door/door.ts'
import type { Reckoning } from './door/protocol.ts'
import { Keeper } from './keep/kept.ts'
import { Mark, plainStorage } from './keep/marks.ts'
import { TypedSlip } from './keep/typed.ts'
import { otherWindows } from './keep/windows.ts'
import { keepOffline } from './offline/register.ts'
import { App, type Outside } from './state/app.ts'
import { once } from './state/once.ts'
import { madeFrom } from './state/questions.ts'
import { Shelving } from './state/shelving.ts'
import { keepTyped } from './state/typing.ts'
import { AppContext, ShelvingContext } from './view/context.ts'
import { Page } from './view/Page.tsx'
import { addressOf, followAddress } from './view/address.ts'

const beside = (path: string): string => new URL(path, document.baseURI).href

const fetchAhead = (): Promise<string | undefined> =>
  fetch(beside('ahead.json')).then(
    (response) => (response.ok ? response.text() : undefined),
    () => undefined,
  )
const visited = new Mark(plainStorage('localStorage'), 'visited')
const firstVisit = location.hash === '' && !visited.made
const fetchedAhead = firstVisit ? fetchAhead() : undefined

let tellShown = (): void => undefined
const shown = new Promise<void>((resolve) => (tellShown = resolve))
const packed = packedPays(location.hostname)

const door = new Door(
  (): WorkerLike => new Worker(new URL('./door/worker.ts', import.meta.url), { type: 'module', name: 'reckoner' }),
  { kind: 'start', loader: beside(__PARTS__.loader) },
  async () => {
    // On a machine with few processors compiling would hold up the season that is shown meanwhile.
    if (firstVisit) await Promise.race([shown, new Promise((resolve) => setTimeout(resolve, 1_000))])
    return compile({ plain: beside(__PARTS__.reckoner), packed: packed ? beside(__PARTS__.packed) : undefined })
  },
)

let fromBuild: Reckoning | undefined

const outside: Outside = {
  door,
  keep: new Keeper(),
  windows: otherWindows(),
  async fetchText(path) {
    const response = await fetch(beside(path))
    if (!response.ok) throw new Error(`${path} answered ${response.status}`)
    return response.text()
  },
  async ahead(name, text) {
    if (name !== madeFrom || text === undefined) return undefined
    const json = await (fetchedAhead ?? fetchAhead())
    const known = json === undefined ? undefined : readAhead(json, text)
    fromBuild = known?.reckoning
    return known
  },
  soon: (begin) => requestAnimationFrame(begin),
  now: () => Date.now(),
}
const app = new App(outside)
const shelving = new Shelving(outside, app)

const root = document.getElementById('page')
if (root !== null) {
  render(
    <AppContext.Provider value={app}>
      <ShelvingContext.Provider value={shelving}>
        <Page />
      </ShelvingContext.Provider>
    </AppContext.Provider>,
    root,
  )
}
keepTyped(app, new TypedSlip(plainStorage('sessionStorage')))
if (firstVisit) {
  history.replaceState(null, '', addressOf(madeFrom))
  void app.openFirst(madeFrom)
}
void app.begin().then(() => followAddress(app, shelving, visited))

// A window that slept, or was brought back whole by the back button, has heard nothing.
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void app.ledger.lookAround())
addEventListener('pageshow', (event) => event.persisted && void app.ledger.lookAround())

const reckoned = (): boolean => app.reckoning.value !== undefined

once(reckoned, () => setTimeout(tellShown))
// For whoever measures: the first season that was drawn in this browser.
once(() => reckoned() && app.reckoning.value !== fromBuild, () => performance.mark('reckoned here'))
once(reckoned, () => void import('./print/begin.tsx').then(({ printPlans }) => printPlans(app)))

if (import.meta.env.PROD) {
  const come = (): void => {
    app.notice.value = { tone: 'news', text: 'A newer Thawbook has come.', hint: 'It opens the next time this page is loaded. Your sheets stay.' }
  }
  // Not before the first result, which it would keep waiting; but also for who only looks at the list.
  const keep = (): void => {
    clearTimeout(later)
    stopWaiting()
    void keepOffline(packed, { come })
  }
  const later = setTimeout(keep, 8_000)
  const stopWaiting = once(reckoned, keep)
}
