import { describe, expect, it } from 'vitest'
import { familyOf, firstBeside } from './family.ts'
import { scenarioText } from './scenario.ts'

const shelf = [
  { file: 'base.yaml', title: 'Base', about: '' },
  { file: 'gas.yaml', title: 'Gas', about: '', from: 'base.yaml' },
  { file: 'other.yaml', title: 'Other', about: '' },
]
const kept = (name: string, from: string) => ({ name, title: name, files: { [name]: scenarioText(from, name) } })
const names = (family: readonly { name: string }[]): string[] => family.map(({ name }) => name)

describe('familyOf', () => {
  it('has what is taken from the open sheet, near and far, and nothing else', () => {
    const family = familyOf({ name: 'base.yaml', view: { title: 'Base' } }, shelf, [kept('mine.yaml', 'gas.yaml'), kept('far.yaml', 'other.yaml')])
    expect(names(family)).toEqual(['gas.yaml', 'mine.yaml'])
  })

  it('has the sheet a scenario is taken from, and its other scenarios', () => {
    const open = { name: 'mine.yaml', view: { title: 'Mine', from: 'base.yaml' } }
    expect(names(familyOf(open, shelf, [kept('mine.yaml', 'base.yaml')]))).toEqual(['base.yaml', 'gas.yaml'])
  })

  it('reads whatever way a file names what it is taken from', () => {
    for (const said of ['my base.yaml  # the plain one', "'my base.yaml'", '"my base.yaml"']) {
      const scenario = { name: 's.yaml', title: 'S', files: { 's.yaml': `thawbook: 1\nfrom: ${said}\ntitle: S\n` } }
      expect(names(familyOf({ name: 'my base.yaml', view: { title: '' } }, [], [scenario]))).toEqual(['s.yaml'])
    }
  })

  it('ends where sheets are taken from each other', () => {
    const open = { name: 'a.yaml', view: { title: 'A', from: 'b.yaml' } }
    expect(familyOf(open, [], [kept('b.yaml', 'a.yaml')]).length).toBeLessThan(2)
  })
})

describe('firstBeside', () => {
  it('is what a scenario is taken from', () => {
    const open = { name: 'gas.yaml', view: { title: 'Gas', from: 'base.yaml' } }
    expect(firstBeside(open, familyOf(open, shelf, []))).toEqual(['base.yaml'])
  })

  it('is the first scenario of a sheet that stands alone, or none', () => {
    const base = { name: 'base.yaml', view: { title: 'Base' } }
    expect(firstBeside(base, familyOf(base, shelf, []))).toEqual(['gas.yaml'])
    const other = { name: 'other.yaml', view: { title: 'Other' } }
    expect(firstBeside(other, familyOf(other, shelf, []))).toEqual([])
  })
})
