import { describe, expect, it } from 'vitest'
import { isKept, nextKept, readKept, type Kept } from './kept.ts'

const ridge: Kept = { name: 'ridge.yaml', title: 'Ridge', files: { 'ridge.yaml': 'thawbook: 1\n' }, at: 5000, shipped: false, version: 40 }

describe('readKept', () => {
  it('reads what it kept, and what was kept before versions were', () => {
    expect(readKept('ridge.yaml', { ...ridge, form: 1 })).toEqual(ridge)
    const { version: _, ...before } = ridge
    expect(readKept('ridge.yaml', before)).toEqual({ ...ridge, version: 0 })
  })

  it('leaves a later form alone, with its text where there is one', () => {
    expect(readKept('ridge.yaml', { ...ridge, form: 2 })).toEqual({ name: 'ridge.yaml', why: 'newer', text: 'thawbook: 1\n' })
    expect(readKept('ridge.yaml', { form: 3 })).toEqual({ name: 'ridge.yaml', why: 'newer' })
  })

  it.each([
    ['no record', 'text'],
    ['null', null],
    ['a list', [ridge]],
    ['no text of its own', { ...ridge, files: { 'other.yaml': 'thawbook: 1\n' } }],
    ['a base that is no text', { ...ridge, files: { ...ridge.files, 'base.yaml': 7 } }],
    ['no time', { ...ridge, at: '5000' }],
    ['a form that is no number', { ...ridge, form: 'new' }],
  ])('takes %s for damaged', (_what, value) => {
    const found = readKept('ridge.yaml', value)
    expect(isKept(found)).toBe(false)
    expect(found).toMatchObject({ name: 'ridge.yaml', why: 'damaged' })
  })
})

describe('nextKept', () => {
  it('follows the version the change was made to', () => {
    expect(nextKept(ridge, { ...ridge, form: 1 })).toEqual({ ...ridge, form: 1, version: 5000 })
  })

  it('gives a new version though the clock stood still or went back', () => {
    expect(nextKept({ ...ridge, version: 6000 }, { ...ridge, version: 6000 })?.version).toBe(6001)
  })

  it('is nothing where another window was first', () => {
    expect(nextKept(ridge, { ...ridge, version: 41 })).toBeUndefined()
    expect(nextKept({ ...ridge, version: 0 }, ridge)).toBeUndefined()
  })

  it('never takes the place of what cannot be used', () => {
    expect(nextKept(ridge, { ...ridge, form: 2 })).toBeUndefined()
    expect(nextKept({ ...ridge, version: 0 }, 'torn')).toBeUndefined()
  })

  it('puts a removed sheet back', () => {
    expect(nextKept(ridge, undefined)).toMatchObject({ title: 'Ridge', version: 5000 })
  })
})
