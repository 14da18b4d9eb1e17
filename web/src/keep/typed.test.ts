import { describe, expect, it } from 'vitest'
import { Mark, type PlainStorage } from './marks.ts'
import { TypedSlip } from './typed.ts'

function memory(): PlainStorage & { values: Map<string, string> } {
  const values = new Map<string, string>()
  return {
    values,
    getItem: (key) => values.get(key) ?? null,
    setItem: (key, value) => void values.set(key, value),
    removeItem: (key) => void values.delete(key),
  }
}

const full: PlainStorage = {
  getItem: () => null,
  setItem: () => {
    throw new DOMException('full', 'QuotaExceededError')
  },
  removeItem: () => undefined,
}

describe('TypedSlip', () => {
  const asked = new Map([['taps', { is: 90 }]])
  const edits = [{ about: 'taps', set: { is: 90 } }]

  it('is found by the page that comes after', () => {
    const storage = memory()
    new TypedSlip(storage).write('a.yaml', asked)
    expect(new TypedSlip(storage).take()).toMatchObject({ name: 'a.yaml', edits })
    expect(new TypedSlip(storage).take()).toBeUndefined()
  })

  it('is gone once the sheet holds it', () => {
    const storage = memory()
    const slip = new TypedSlip(storage)
    slip.write('a.yaml', asked)
    slip.clear()
    expect(new TypedSlip(storage).take()).toBeUndefined()
  })

  it('is not taken up again when taking it up ended the page', () => {
    const storage = memory()
    new TypedSlip(storage).write('a.yaml', asked)
    const second = new TypedSlip(storage)
    expect(second.take()?.edits).toEqual(edits)
    second.write('a.yaml', asked)
    expect(new TypedSlip(storage).take()).toBeUndefined()
  })

  it('counts anew after it was kept', () => {
    const storage = memory()
    new TypedSlip(storage).write('a.yaml', asked)
    const second = new TypedSlip(storage)
    second.take()
    second.clear()
    second.write('a.yaml', asked)
    expect(new TypedSlip(storage).take()?.edits).toEqual(edits)
  })

  it.each(['', '{', 'null', '{"name":1,"edits":[]}', '{"name":"a"}'])('makes nothing of %j', (text) => {
    const storage = memory()
    storage.setItem('thawbook.typed', text)
    expect(new TypedSlip(storage).take()).toBeUndefined()
  })

  it('does without where nothing can be stored', () => {
    expect(() => new TypedSlip(full).write('a.yaml', asked)).not.toThrow()
  })
})

describe('Mark', () => {
  it('stays once made', () => {
    const storage = memory()
    const mark = new Mark(storage, 'seen')
    expect(mark.made).toBe(false)
    mark.make()
    expect(new Mark(storage, 'seen').made).toBe(true)
    expect(new Mark(storage, 'other').made).toBe(false)
    expect(() => new Mark(full, 'seen').make()).not.toThrow()
  })
})
