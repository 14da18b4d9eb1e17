import { describe, expect, it } from 'vitest'
import { shelfOf } from './shelf.ts'

const base = 'thawbook: 1\ntitle: Base\nabout: A sheet.\n'
const taken = (from: string): string => `thawbook: 1\nfrom: ${from}\ntitle: Taken from ${from}\n`

describe('shelfOf', () => {
  it('lists each sheet with its scenarios after it', () => {
    const shelf = shelfOf([['a-scenario.yaml', taken('base.yaml')], ['base.yaml', base], ['other.yaml', base], ['z.yaml', taken('a-scenario.yaml')]])
    expect(shelf.map((e) => e.file)).toEqual(['base.yaml', 'a-scenario.yaml', 'z.yaml', 'other.yaml'])
    expect(shelf[0]).toEqual({ file: 'base.yaml', title: 'Base', about: 'A sheet.' })
    expect(shelf[1]).toEqual({ file: 'a-scenario.yaml', title: 'Taken from base.yaml', about: '', from: 'base.yaml' })
  })

  it('lists a scenario whose sheet is not shipped by itself', () => {
    expect(shelfOf([['s.yaml', taken('elsewhere.yaml')]]).map((e) => e.file)).toEqual(['s.yaml'])
  })

  it('stops the build at a file that is no sheet', () => {
    expect(() => shelfOf([['notes.yaml', 'title: Notes\n']])).toThrow('notes.yaml is not a sheet')
  })
})
