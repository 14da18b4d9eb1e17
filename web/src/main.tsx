import { render } from 'preact'
import { Door, type WorkerLike } from './door/door.ts'
import { Keeper } from './keep/kept.ts'
import { otherWindows } from './keep/windows.ts'
import { App } from './state/app.ts'
import { AppContext } from './view/context.ts'
import { Page } from './view/Page.tsx'
import { followAddress } from './view/address.ts'

const beside = (path: string): string => new URL(path, document.baseURI).href

const door = new Door(
  (): WorkerLike => new Worker(new URL('./door/worker.ts', import.meta.url), { type: 'module', name: 'reckoner' }),
  { kind: 'start', loader: beside(__PARTS__.loader), reckoner: beside(__PARTS__.reckoner) },
)

const app = new App({
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
})

const root = document.getElementById('page')
if (root !== null) {
  render(
    <AppContext.Provider value={app}>
      <Page />
    </AppContext.Provider>,
    root,
  )
}
void app.begin().then(() => followAddress(app))
