import { describe, expect, it } from 'vitest'
import { matching, words } from './words.ts'

describe('matching', () => {
  const entries = [['boil heat', 'energy'], ['pan_holds', 'volume of a pan'], ['Été', '']]
  const found = (sought: string): string[] => matching(entries, sought, (e) => e).map((e) => e[0] ?? '')

  it('finds entries that say every word sought, anywhere in them', () => {
    expect(found('PAN vol')).toEqual(['pan_holds'])
    expect(found('boil volume')).toEqual([])
    expect(found('ete')).toEqual(['Été'])
  })

  it('finds all when nothing is sought', () => {
    expect(found('  ')).toHaveLength(3)
  })
})

describe('words', () => {
  it('has each word once', () => {
    expect(new Set(words.map(({ word }) => word)).size).toBe(words.length)
  })
})
