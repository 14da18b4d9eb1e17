import { signal } from '@preact/signals'
import { expect, it } from 'vitest'
import type { Edit, EditSet } from '../door/protocol.ts'
import type { PlainStorage } from '../keep/marks.ts'
import { TypedSlip } from '../keep/typed.ts'
import { keepTyped } from './typing.ts'

type Page = Parameters<typeof keepTyped>[0]

/** As much of a page as typing has to do with. */
function bench(storage: PlainStorage) {
  const sheet = signal<{ name: string } | undefined>(undefined)
  const asked = signal<ReadonlyMap<string, EditSet>>(new Map())
  const unkept = signal(false)
  const edits: Edit[] = []
  const ledger = {
    get unkept() {
      return unkept.value
    },
  }
  keepTyped({ sheet, asked, ledger, edit: (edit: Edit) => void edits.push(edit) } as unknown as Page, new TypedSlip(storage))
  return { sheet, asked, unkept, edits }
}

function memory(): PlainStorage & { size: () => number } {
  const values = new Map<string, string>()
  return {
    size: () => values.size,
    getItem: (key) => values.get(key) ?? null,
    setItem: (key, value) => void values.set(key, value),
    removeItem: (key) => void values.delete(key),
  }
}

it('holds the slip until the sheet has the change and is kept', () => {
  const storage = memory()
  const { sheet, asked, unkept } = bench(storage)
  sheet.value = { name: 'a.yaml' }
  expect(storage.size()).toBe(0)
  asked.value = new Map([['taps', { is: 90 }]])
  expect(storage.size()).toBe(1)
  unkept.value = true
  asked.value = new Map()
  expect(storage.size()).toBe(1)
  unkept.value = false
  expect(storage.size()).toBe(0)
})

it('puts the slip of an earlier page into its sheet, once it is open, and once only', async () => {
  const storage = memory()
  const before = bench(storage)
  before.sheet.value = { name: 'a.yaml' }
  before.asked.value = new Map([['taps', { is: 90 }]])

  const { sheet, edits } = bench(storage)
  sheet.value = { name: 'b.yaml' }
  await Promise.resolve()
  expect(edits).toEqual([])
  for (let i = 0; i < 2; i++) {
    sheet.value = { name: 'a.yaml' }
    await Promise.resolve()
  }
  expect(edits).toEqual([{ about: 'taps', set: { is: 90 } }])
})
