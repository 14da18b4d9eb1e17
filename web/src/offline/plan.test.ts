import { describe, expect, it } from 'vitest'
import { cacheOf, keeps, keyOf, nameIn, outlived, tagIn } from './plan.ts'

const folder = 'https://host.test/sugar/house/'

describe('nameIn', () => {
  it.each([
    ['https://host.test/sugar/house/', 'index.html'],
    ['https://host.test/sugar/house/?x=1#new', 'index.html'],
    ['https://host.test/sugar/house/reckoner.wasm?v=12ab', 'reckoner.wasm'],
    ['https://host.test/sugar/house/scenarios/petite%20rivi%C3%A8re.yaml', 'scenarios/petite rivière.yaml'],
    ['https://host.test/sugar/', undefined],
    ['https://other.test/sugar/house/reckoner.wasm', undefined],
    ['https://host.test/sugar/house/%E0%A4%A', undefined],
  ])('of %s is %s', (url, name) => expect(nameIn(folder, url)).toBe(name))
})

describe('tagIn', () => {
  it('is what stands behind v', () => {
    expect(tagIn(`${folder}reckoner.wasm?v=12ab`)).toBe('12ab')
    expect(tagIn(`${folder}index.html`)).toBeUndefined()
  })
})

describe('keyOf', () => {
  it('tells two builds of one file apart, and is a URL of the folder', () => {
    const key = keyOf(folder, { name: 'scenarios/a b.yaml', tag: '12ab' })
    expect(key).toBe('https://host.test/sugar/house/scenarios/a%20b.yaml?kept=12ab')
    expect(nameIn(folder, key)).toBe('scenarios/a b.yaml')
  })
})

describe('outlived', () => {
  const of = (id: string): string => cacheOf(folder, id)

  it('spares the build itself, the one before it, and every other folder', () => {
    const other = cacheOf('https://host.test/', 'a')
    expect(outlived(folder, of('d'), [of('a'), other, of('b'), of('c'), of('d')])).toEqual([of('a'), of('b')])
    expect(outlived(folder, of('a'), [of('a')])).toEqual([])
  })
})

describe('keeps', () => {
  const files = ['reckoner.wasm', 'reckoner.wasm.gz', 'small.wasm', 'index.html'].map((name) => ({ name, digest: '', tag: '' }))
  it('one form of each program', () => {
    expect(files.filter((f) => keeps(f.name, true, files)).map((f) => f.name)).toEqual(['reckoner.wasm.gz', 'small.wasm', 'index.html'])
    expect(files.filter((f) => keeps(f.name, false, files)).map((f) => f.name)).toEqual(['reckoner.wasm', 'small.wasm', 'index.html'])
  })
})
