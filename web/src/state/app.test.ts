import { describe, expect, it } from 'vitest'
import { Door } from '../door/door.ts'
import { FakeWorker } from '../door/fake.ts'
import { nextKept, type Kept, type Put } from '../keep/kept.ts'
import type { News, Windows } from '../keep/windows.ts'
import { App, type Keeping } from './app.ts'

const program = new WebAssembly.Module(new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]))

const text = (title: string, taps: number): string => JSON.stringify({ title, taps })

const shipped: Record<string, string> = {
  'scenarios/index.json': JSON.stringify([
    { file: 'a.yaml', title: 'A', about: '' },
    { file: 'b.yaml', title: 'B', about: '', from: 'a.yaml' },
  ]),
  'scenarios/a.yaml': text('A', 140),
  'scenarios/b.yaml': text('B', 260),
}

class KeepInMemory implements Keeping {
  readonly sheets = new Map<string, Kept>()
  put(kept: Kept): Promise<Put> {
    const next = nextKept(kept, this.sheets.get(kept.name))
    if (next !== undefined) this.sheets.set(kept.name, next)
    return Promise.resolve(next?.version)
  }
  get(name: string): Promise<Kept | undefined> {
    return Promise.resolve(this.sheets.get(name))
  }
  forget(name: string): Promise<unknown> {
    const had = this.sheets.get(name)
    this.sheets.delete(name)
    return Promise.resolve(had)
  }
  restore(name: string, value: unknown): Promise<void> {
    this.sheets.set(name, value as Kept)
    return Promise.resolve()
  }
  all(): Promise<Kept[]> {
    return Promise.resolve([...this.sheets.values()])
  }
}

const none = (): Promise<never> => Promise.reject(new Error('private'))
const keepsNothing: Keeping = { put: none, get: none, forget: none, restore: none, all: none }

async function bench(keep: Keeping = new KeepInMemory(), windows: Windows = { tell: () => undefined, onnews: () => undefined }) {
  const workers: FakeWorker[] = []
  const door = new Door(() => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker
  }, { kind: 'start', loader: '' }, () => Promise.resolve(program))
  const app = new App({
    door,
    keep,
    windows,
    fetchText: (path) => (shipped[path] === undefined ? Promise.reject(new Error('404')) : Promise.resolve(shipped[path])),
    soon: (begin) => queueMicrotask(begin),
    now: () => 1000,
  })
  await app.begin()
  const worker = (): FakeWorker => workers.at(-1) ?? new FakeWorker()
  const open = async (name: string): Promise<void> => {
    await app.openNamed(name)
    await app.idle()
  }
  const setTaps = async (is: number): Promise<void> => {
    app.edit({ about: 'taps', set: { is } })
    await app.idle()
  }
  return { app, door, workers, worker, open, setTaps }
}

describe('opening', () => {
  it('opens a shipped sheet and reckons it', async () => {
    const { app, open } = await bench()
    await open('a.yaml')
    expect(app.sheet.value).toMatchObject({ name: 'a.yaml', shipped: true, changed: false })
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
  })

  it('hands over with a scenario the sheet it is taken from', async () => {
    const { worker, open } = await bench()
    await open('b.yaml')
    const sent = JSON.parse(worker().calls.find((c) => c.method === 'open')?.payload ?? '{}')
    expect(Object.keys(sent.files).sort()).toEqual(['a.yaml', 'b.yaml'])
  })

  it('says when there is no such sheet', async () => {
    const { app, open } = await bench()
    await open('nowhere.yaml')
    expect(app.sheet.value).toBeUndefined()
    expect(app.notice.value?.text).toContain('nowhere.yaml')
  })

  it('leaves the open sheet alone when a file is not one', async () => {
    const { app, open } = await bench()
    await open('a.yaml')
    await app.openFile('shopping.txt', 'milk')
    expect(app.sheet.value?.name).toBe('a.yaml')
    expect(app.unread.value).toMatchObject({ name: 'shopping.txt', shipped: false })
    expect(app.unread.value?.diagnostics.map((d) => d.code)).toEqual(['not-a-sheet'])
  })

  it('keeps an opened file at once', async () => {
    const keep = new KeepInMemory()
    const { app } = await bench(keep)
    await app.openFile('mine.yaml', text('Mine', 12))
    await app.idle()
    expect(keep.sheets.get('mine.yaml')).toMatchObject({ title: 'Mine', shipped: false })
    expect(app.reckoning.value?.paragraph).toBe('12 taps')
  })

  it('takes a shipped sheet that was saved to a file for the same sheet, changed', async () => {
    const keep = new KeepInMemory()
    const { app } = await bench(keep)
    await app.openFile('a.yaml', text('A', 150))
    expect(app.sheet.value).toMatchObject({ shipped: true, changed: true })
  })

  it('offers the shipped sheet when the kept one can no longer be read', async () => {
    const keep = new KeepInMemory()
    await keep.put({ name: 'a.yaml', title: 'A', files: { 'a.yaml': 'of another form' }, at: 0, shipped: true, version: 0 })
    const { app, open } = await bench(keep)
    await open('a.yaml')
    expect(app.unread.value).toMatchObject({ name: 'a.yaml', shipped: true })
    await app.startAgain('a.yaml')
    await app.idle()
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
  })

  it('shows nothing of a sheet that was put away while it was being opened', async () => {
    const { app, worker, open } = await bench()
    await open('a.yaml')
    worker().hold = true
    const opening = app.openNamed('b.yaml')
    await new Promise((resolve) => setTimeout(resolve))
    app.close()
    worker().release()
    await opening
    await app.idle()
    expect(app.sheet.value).toBeUndefined()
    expect(app.reckoning.value).toBeUndefined()
  })
})

describe('editing', () => {
  it('takes a change, reckons, and keeps it', async () => {
    const keep = new KeepInMemory()
    const { app, open, setTaps } = await bench(keep)
    await open('a.yaml')
    await setTaps(150)
    expect(app.sheet.value?.changed).toBe(true)
    expect(app.reckoning.value?.paragraph).toBe('150 taps')
    expect(keep.sheets.get('a.yaml')?.files['a.yaml']).toBe(text('A', 150))
  })

  it('comes back to the kept change, and can start again without it', async () => {
    const keep = new KeepInMemory()
    const first = await bench(keep)
    await first.open('a.yaml')
    await first.setTaps(150)

    const later = await bench(keep)
    await later.open('a.yaml')
    expect(later.app.reckoning.value?.paragraph).toBe('150 taps')
    await later.app.startAgain('a.yaml')
    await later.app.idle()
    expect(later.app.reckoning.value?.paragraph).toBe('140 taps')
    expect(keep.sheets.size).toBe(0)
  })

  it('shows what was typed until the sheet has it', async () => {
    const { app, worker, open } = await bench()
    await open('a.yaml')
    worker().hold = true
    app.edit({ about: 'taps', set: { is: 1 } })
    app.edit({ about: 'taps', set: { is: 15 } })
    expect(app.asked.value.get('taps')).toEqual({ is: 15 })
    await new Promise((resolve) => setTimeout(resolve))
    expect(app.asked.value.get('taps')).toEqual({ is: 15 })
    worker().release()
    await app.idle()
    expect(app.asked.value.size).toBe(0)
  })

  it('never queues more than one reckoning', async () => {
    const { app, worker, open } = await bench()
    await open('a.yaml')
    const before = worker().calls.filter((c) => c.method === 'reckon').length
    worker().hold = true
    app.edit({ about: 'taps', set: { is: 1 } })
    await new Promise((resolve) => setTimeout(resolve))
    for (let i = 2; i < 40; i++) app.edit({ about: 'taps', set: { is: i } })
    await new Promise((resolve) => setTimeout(resolve))
    worker().release()
    await app.idle()
    expect(worker().calls.filter((c) => c.method === 'reckon').length - before).toBe(2)
    expect(app.reckoning.value?.paragraph).toBe('39 taps')
  })

  it('says so when the browser keeps nothing', async () => {
    const { app, open, setTaps } = await bench(keepsNothing)
    await open('a.yaml')
    await setTaps(150)
    expect(app.notice.value?.text).toBe('This browser keeps nothing between visits.')
    expect(app.reckoning.value?.paragraph).toBe('150 taps')
  })

  it('says what was wrong with a change that was refused, and takes the others', async () => {
    const { app, open } = await bench()
    await open('a.yaml')
    app.edit({ about: 'nowhere', set: { is: 1 } })
    app.edit({ about: 'taps', set: { is: 150 } })
    await app.idle()
    expect(app.sheet.value?.refused.map((d) => d.code)).toEqual(['edit-unknown'])
    expect(app.reckoning.value?.paragraph).toBe('150 taps')
    app.edit({ about: 'taps', set: { is: 151 } })
    await app.idle()
    expect(app.sheet.value?.refused).toEqual([])
  })

  it('tells how far a reckoning is while it is at work, and no longer', async () => {
    const { app, open } = await bench()
    const told: (string | undefined)[] = []
    app.progress.subscribe((now) => told.push(now && `${now.done} of ${now.total}`))
    await open('a.yaml')
    expect(told).toEqual([undefined, '5 of 10', undefined])
  })

  it('asks for the units chosen', async () => {
    const { app, worker, open } = await bench()
    await open('a.yaml')
    app.showIn('metric')
    await app.idle()
    expect(worker().calls.at(-1)).toMatchObject({ method: 'reckon', payload: '{"system":"metric","changed":true}' })
  })
})

describe('going back', () => {
  it('undoes and does again, and keeps what it went back to', async () => {
    const keep = new KeepInMemory()
    const { app, open } = await bench(keep)
    await open('a.yaml')
    const now = (): string | undefined => app.reckoning.value?.paragraph
    for (const is of [150, 160]) {
      app.edit({ about: 'taps', set: { is } })
      await app.idle()
      app.edit({ about: 'taps', set: { is: is + 1 }, move: { by: 1 } })
      await app.idle()
    }
    const was: (string | undefined)[] = []
    for (const way of ['back', 'back', 'back', 'back', 'back', 'forth', 'forth'] as const) {
      await app.step(way)
      await app.idle()
      was.push(now())
    }
    expect(was).toEqual(['160 taps', '151 taps', '150 taps', '140 taps', '140 taps', '150 taps', '151 taps'])
    expect(JSON.parse((await keep.get('a.yaml'))?.files['a.yaml'] ?? '')).toEqual({ title: 'A', taps: 151 })
    app.edit({ about: 'taps', set: { is: 99 } })
    await app.idle()
    await app.step('forth')
    await app.idle()
    expect(now()).toBe('99 taps')
  })

  it('forgets the changes of one sheet in another', async () => {
    const { app, open } = await bench()
    await open('a.yaml')
    app.edit({ about: 'taps', set: { is: 150 } })
    await app.idle()
    await open('b.yaml')
    expect(app.editing.history.value.past).toEqual([])
    expect(app.editing.before.value).toBeUndefined()
  })
})

describe('a number that is dragged', () => {
  it('is shown and not written until it is let go', async () => {
    const { app, worker, open } = await bench()
    await open('a.yaml')
    for (const is of [150, 160, 170]) {
      app.try('taps', { is })
      await app.idle()
      expect(app.reckoning.value?.paragraph).toBe(`${is} taps`)
      expect(app.sheet.value?.view.chapters[0]?.lines[0]?.is).toBe(140)
      expect(app.asked.value.get('taps')).toEqual({ is })
    }
    app.letGo('taps')
    await app.idle()
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
    expect(app.asked.value.size).toBe(0)
    expect(app.editing.history.value.past).toEqual([])
    expect(worker().calls.filter((c) => c.method === 'edit')).toEqual([])
  })

  it('is one change once it is taken, compared with how it stood before the drag', async () => {
    const { app, open } = await bench()
    await open('a.yaml')
    const before = app.reckoning.value
    app.try('taps', { is: 150 })
    await app.idle()
    app.try('taps', { is: 160 })
    app.edit({ about: 'taps', set: { is: 160 } })
    await app.idle()
    expect(app.sheet.value?.view.chapters[0]?.lines[0]?.is).toBe(160)
    expect(app.editing.history.value.past.map((s) => s.what)).toEqual(['Taps'])
    expect([...(app.editing.before.value?.keys() ?? [])]).toEqual(before?.lines.map((l) => l.id))
  })
})

describe('a reckoner that dies', () => {
  it('is started again with the sheet as it was before the change', async () => {
    const { app, workers, open, setTaps } = await bench()
    await open('a.yaml')
    await setTaps(150)
    await setTaps(666)
    expect(workers).toHaveLength(2)
    expect(app.notice.value).toMatchObject({ tone: 'news' })
    expect(app.notice.value?.text).toContain('RangeError')
    expect(app.reckoning.value?.paragraph).toBe('150 taps')
    await setTaps(151)
    expect(app.reckoning.value?.paragraph).toBe('151 taps')
  })

  it('while nobody waits for it loses nothing of the next change', async () => {
    const { app, worker, open, setTaps } = await bench()
    await open('a.yaml')
    worker().fail('gone')
    await setTaps(150)
    expect(app.reckoning.value?.paragraph).toBe('150 taps')
  })

  it('on opening says so and leaves the page able to open another', async () => {
    const { app, open } = await bench()
    await app.openFile('deadly.yaml', text('Deadly', 666))
    expect(app.notice.value?.text).toContain('stopped while opening “deadly.yaml”')
    await open('a.yaml')
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
  })

  it('again and again is given up until the person asks', async () => {
    const { app, door, worker, open } = await bench()
    await open('a.yaml')
    const sheet = app.sheet.value
    if (sheet === undefined) throw new Error('no sheet')
    // As if the sheet itself, once good, had come to kill the reckoner.
    app.sheet.value = { ...sheet, files: { 'a.yaml': text('A', 666) } }
    worker().fail('gone')
    app.showIn('metric')
    await app.idle()
    expect(app.givenUp).toBe(true)
    expect(door.dead).toBe(true)
    app.sheet.value = sheet
    await app.tryAgain()
    await app.idle()
    expect(app.givenUp).toBe(false)
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
  })
})

describe('two windows on one sheet', () => {
  /** Two pages over one store, each told what the other tells. */
  async function two() {
    const keep = new KeepInMemory()
    const wires: Windows[] = []
    const wire = (): Windows => {
      const mine: Windows = {
        tell: (news: News) => wires.filter((w) => w !== mine).forEach((w) => w.onnews(news)),
        onnews: () => undefined,
      }
      wires.push(mine)
      return mine
    }
    return { keep, one: await bench(keep, wire()), other: await bench(keep, wire()) }
  }
  const textOf = (keep: KeepInMemory, name: string): string | undefined => keep.sheets.get(name)?.files[name]

  it('hear of each other, and the second shows what the first did', async () => {
    const { one, other } = await two()
    await one.open('a.yaml')
    await other.open('a.yaml')
    await one.setTaps(150)
    expect(one.app.ledger.elsewhere.value).toBeUndefined()
    expect(other.app.ledger.elsewhere.value?.name).toBe('a.yaml')
    await other.open('a.yaml')
    expect(other.app.ledger.elsewhere.value).toBeUndefined()
    expect(other.app.reckoning.value?.paragraph).toBe('150 taps')
    await other.setTaps(151)
    expect(other.app.sheet.value?.name).toBe('a.yaml')
  })

  it('lose nothing when both change it', async () => {
    const { keep, one, other } = await two()
    await one.open('a.yaml')
    await other.open('a.yaml')
    await one.setTaps(150)
    await other.setTaps(90)
    expect(other.app.sheet.value).toMatchObject({ name: 'a-2.yaml', shipped: false })
    expect(other.app.notice.value?.text).toContain('kept as “a-2.yaml”')
    await other.setTaps(91)
    await one.setTaps(152)
    expect([textOf(keep, 'a.yaml'), textOf(keep, 'a-2.yaml')]).toEqual([text('A', 152), text('A', 91)])
    expect(one.app.kept.value.map((k) => k.name).sort()).toEqual(['a-2.yaml', 'a.yaml'])
  })

  it('may part at once', async () => {
    const { keep, one, other } = await two()
    await one.open('a.yaml')
    await other.open('a.yaml')
    await one.setTaps(150)
    await other.app.ledger.keepBoth()
    expect([textOf(keep, 'a.yaml'), textOf(keep, 'a-2.yaml')]).toEqual([text('A', 150), text('A', 140)])
    expect(other.app.ledger.elsewhere.value).toBeUndefined()
  })

  it('see it on waking, though nothing was heard', async () => {
    const keep = new KeepInMemory()
    const one = await bench(keep)
    const other = await bench(keep)
    await one.open('a.yaml')
    await other.open('a.yaml')
    await one.setTaps(150)
    expect(other.app.ledger.elsewhere.value).toBeUndefined()
    await other.app.ledger.lookAround()
    expect(other.app.ledger.elsewhere.value?.name).toBe('a.yaml')
  })
})

describe('a file of a name that is kept', () => {
  it('opens beside it when it says something else, and in it when it says the same', async () => {
    const keep = new KeepInMemory()
    const { app } = await bench(keep)
    for (const taps of [1, 2, 1]) {
      await app.openFile('mine.yaml', text('Mine', taps))
      await app.idle()
    }
    expect([...keep.sheets.keys()]).toEqual(['mine.yaml', 'mine-2.yaml'])
    expect(app.sheet.value?.name).toBe('mine.yaml')
  })
})

describe('a reckoning that is stopped', () => {
  it('leaves the sheet with its change, and says that nothing was drawn', async () => {
    const { app, worker, workers, open, setTaps } = await bench()
    await open('a.yaml')
    app.progress.subscribe((now) => now && app.sheet.value?.view.source.includes('77') && app.stop())
    await setTaps(77)
    expect(workers).toHaveLength(2)
    expect(app.stopped.value).toBe(true)
    expect(app.notice.value).toBeUndefined()
    expect(app.reckoning.value?.paragraph).toBe('140 taps')
    expect(worker().calls.map((c) => c.method)).toEqual(['open'])
  })

  it('can be asked for again', async () => {
    const { app, open, setTaps } = await bench()
    await open('a.yaml')
    const stop = app.progress.subscribe((now) => now && app.stop())
    await setTaps(77)
    stop()
    app.reckonAgain()
    await app.idle()
    expect([app.stopped.value, app.reckoning.value?.paragraph]).toEqual([false, '77 taps'])
  })
})
