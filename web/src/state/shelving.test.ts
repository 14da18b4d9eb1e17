import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { Door } from '../door/door.ts'
import type { Files } from '../door/protocol.ts'
import { FakeWorker } from '../door/fake.ts'
import { nextKept, type Kept } from '../keep/kept.ts'
import type { News } from '../keep/windows.ts'
import type { Keeping, Notice } from './kinds.ts'
import { Ledger } from './ledger.ts'
import { blank } from './questions.ts'
import type { ShelfEntry } from './shelf.ts'
import { Shelving } from './shelving.ts'

const program = new WebAssembly.Module(new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]))
const text = (title: string, taps = 1): string => JSON.stringify({ title, taps })
const creek: Kept = { name: 'creek.yaml', title: 'Creek', files: { 'creek.yaml': text('Creek') }, at: 1, shipped: false, version: 4 }

function bench(...kept: Kept[]) {
  const sheets = new Map<string, unknown>(kept.map((k) => [k.name, k]))
  const keep: Keeping = {
    async put(next) {
      const made = nextKept(next, sheets.get(next.name))
      if (made !== undefined) sheets.set(next.name, made)
      return made?.version
    },
    get: async (name) => sheets.get(name) as Kept | undefined,
    async forget(name) {
      const had = sheets.get(name)
      sheets.delete(name)
      return had
    },
    async restore(name, value) {
      if (!sheets.has(name)) sheets.set(name, value)
    },
    all: async () => [...sheets.values()] as Kept[],
  }
  const told: News[] = []
  const notice = signal<Notice | undefined>(undefined)
  const shelf = signal<readonly ShelfEntry[] | undefined>([{ file: 'base.yaml', title: 'Base', about: '' }, { file: 'dry.yaml', title: 'Dry', about: '', from: 'base.yaml' }])
  const outside = {
    door: new Door(() => new FakeWorker(), { kind: 'start', loader: '' }, () => Promise.resolve(program)),
    keep,
    windows: { tell: (news: News) => void told.push(news), onnews: () => undefined },
    fetchText: (path: string) => (path.endsWith('pallets.yaml') ? Promise.resolve(text('Pallets')) : Promise.reject(new Error('404'))),
    now: () => 50,
  }
  const ledger = new Ledger(outside, { sheet: signal(undefined), notice, shelf })
  const opened: [string, string][] = []
  const shelving = new Shelving(outside, {
    ledger,
    notice,
    shelf,
    filesAtHand: async (): Promise<Files> => ({ 'base.yaml': text('Base'), 'dry.yaml': text('Dry'), 'other.yaml': text('Other') }),
    openFile: async (name, source) => void opened.push([name, source]),
  })
  return { sheets: sheets as Map<string, Kept>, told, notice, ledger, opened, shelving }
}

describe('Shelving', () => {
  it('gives a sheet another title in its own text, and tells the other windows', async () => {
    const { shelving, sheets, told, ledger } = bench(creek)
    await shelving.rename(creek, 'Creek, 2027')
    expect(sheets.get('creek.yaml')).toMatchObject({ title: 'Creek, 2027', files: { 'creek.yaml': text('Creek, 2027') }, version: 50 })
    expect(told).toEqual([{ name: 'creek.yaml', version: 50 }])
    expect(ledger.kept.value.map((k) => k.title)).toEqual(['Creek, 2027'])
  })

  it('renames nothing that another window has just changed', async () => {
    const { shelving, sheets, notice } = bench({ ...creek, version: 9 })
    await shelving.rename(creek, 'Creek, 2027')
    expect(sheets.get('creek.yaml')?.title).toBe('Creek')
    expect(notice.value?.text).toContain('Another window changed that sheet')
  })

  it('copies a sheet beside itself, twice over', async () => {
    const { shelving, sheets } = bench(creek)
    await shelving.copy(creek.name, creek.title, creek.files)
    await shelving.copy(creek.name, creek.title, creek.files)
    expect([...sheets.keys()]).toEqual(['creek.yaml', 'creek-2.yaml', 'creek-3.yaml'])
    expect(sheets.get('creek-3.yaml')).toMatchObject({ title: 'Creek, a copy', files: { 'creek-3.yaml': text('Creek, a copy') }, shipped: false })
  })

  it('copies a shipped scenario with what it is taken from and nothing else', async () => {
    const { shelving, sheets } = bench()
    await shelving.copyShipped({ file: 'dry.yaml', title: 'Dry', about: '', from: 'base.yaml' })
    expect(Object.keys(sheets.get('dry-2.yaml')?.files ?? {}).sort()).toEqual(['base.yaml', 'dry-2.yaml'])
  })

  it('says why a sheet that does not read cannot be renamed, and leaves it', async () => {
    const torn = { ...creek, files: { 'creek.yaml': 'torn' } }
    const { shelving, sheets, notice } = bench(torn)
    await shelving.rename(torn, 'Other')
    expect(sheets.get('creek.yaml')).toEqual(torn)
    expect(notice.value).toMatchObject({ tone: 'trouble', text: '“creek.yaml” cannot be changed: not a sheet.' })
  })

  it('takes a sheet away and puts it back as it was', async () => {
    const { shelving, sheets, told, ledger } = bench(creek)
    await shelving.take('creek.yaml', 'Creek')
    expect([sheets.size, ledger.kept.value.length, shelving.taken.value?.title]).toEqual([0, 0, 'Creek'])
    await shelving.putBack()
    expect(sheets.get('creek.yaml')).toEqual(creek)
    expect(shelving.taken.value).toBeUndefined()
    expect(told).toEqual([{ name: 'creek.yaml', version: 0 }, { name: 'creek.yaml', version: 4 }])
  })

  it('puts nothing over what was kept under the name meanwhile', async () => {
    const { shelving, sheets } = bench(creek)
    await shelving.take('creek.yaml', 'Creek')
    const later = { ...creek, title: 'Later' }
    sheets.set('creek.yaml', later)
    await shelving.putBack()
    expect(sheets.get('creek.yaml')).toBe(later)
  })

  it('opens nothing when the sheet to start from does not read', async () => {
    const { shelving, opened, notice } = bench()
    // The stand-in's sheet is JSON, which a head of comments spoils.
    await shelving.make(blank)
    expect(opened).toEqual([])
    expect(notice.value?.text).toBe('“our-own-season.yaml” cannot be changed: not a sheet.')
  })
})
