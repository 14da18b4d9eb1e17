import { describe, expect, it } from 'vitest'
import { chainOf } from './shelf.ts'

const entry = (file: string, from?: string) => ({ file, title: file, about: '', ...(from === undefined ? {} : { from }) })

describe('chainOf', () => {
  it('follows what a scenario is taken from', () => {
    expect(chainOf('c', [entry('a'), entry('b', 'a'), entry('c', 'b')])).toEqual(['c', 'b', 'a'])
  })

  it('ends in a circle and at a name it does not know', () => {
    expect(chainOf('a', [entry('a', 'b'), entry('b', 'a')])).toEqual(['a', 'b'])
    expect(chainOf('a', [entry('a', 'elsewhere')])).toEqual(['a', 'elsewhere'])
  })
})
