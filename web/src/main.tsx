import { render } from 'preact'
import { packedPays } from './door/compile.ts'
import { Door, type WorkerLike } from './door/door.ts'
import { Keeper } from './keep/kept.ts'
import { Mark, plainStorage } from './keep/marks.ts'
import { TypedSlip } from './keep/typed.ts'
import { otherWindows } from './keep/windows.ts'
import { keepOffline } from './offline/register.ts'
import { App, type Outside } from './state/app.ts'
import { once } from './state/once.ts'
import { Shelving } from './state/shelving.ts'
import { keepTyped } from './state/typing.ts'
import { AppContext, ShelvingContext } from './view/context.ts'
import { Page } from './view/Page.tsx'
import { followAddress } from './view/address.ts'

const beside = (path: string): string => new URL(path, document.baseURI).href

const packed = packedPays(location.hostname)

const door = new Door(
  (): WorkerLike => new Worker(new URL('./door/worker.ts', import.meta.url), { type: 'module', name: 'reckoner' }),
  { kind: 'start', loader: beside(__PARTS__.loader), reckoner: beside(__PARTS__.reckoner), ...(packed ? { packed: beside(__PARTS__.packed) } : {}) },
)

const outside: Outside = {
  door,
  keep: new Keeper(),
  windows: otherWindows(),
  async fetchText(path) {
    const response = await fetch(beside(path))
    if (!response.ok) throw new Error(`${path} answered ${response.status}`)
    return response.text()
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
void app.begin().then(() => followAddress(app, shelving, new Mark(plainStorage('localStorage'), 'visited')))

// A window that slept, or was brought back whole by the back button, has heard nothing.
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void app.ledger.lookAround())
addEventListener('pageshow', (event) => event.persisted && void app.ledger.lookAround())

const reckoned = (): boolean => app.reckoning.value !== undefined

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
