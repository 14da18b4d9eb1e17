import { describe, expect, it } from 'vitest'
import { bucketsOf, meetWords } from './buckets.ts'

const size = { step: 6, gap: 1, height: 20 }

describe('bucketsOf', () => {
  it('stands each season as high as it came to', () => {
    const { buckets, ground, width, before } = bucketsOf([5, 10], [false, true], [], size)
    expect(buckets).toEqual([
      { x: 0, y: 10, height: 10, meets: false },
      { x: 6, y: 0, height: 20, meets: true },
    ])
    expect({ ground, width, before }).toEqual({ ground: 20, width: 11, before: '' })
  })

  it('lets a loss hang below the ground', () => {
    const { buckets, ground } = bucketsOf([-10, 10], [], [], size)
    expect(ground).toBe(10)
    expect(buckets.map(({ y, height, meets }) => [y, height, meets])).toEqual([[10, 10, undefined], [0, 10, undefined]])
  })

  it('measures what was before by the same rule', () => {
    const { buckets, before } = bucketsOf([5, 10], [], [10, 20], size)
    expect(buckets.map((b) => b.height)).toEqual([5, 10])
    expect(before).toBe('M0 10H6V0H11')
  })

  it('draws nothing of nothing', () => {
    expect(bucketsOf([0, 0], [], [], size).buckets.map((b) => b.height)).toEqual([0, 0])
  })
})

describe('meetWords', () => {
  it('counts', () => {
    expect(meetWords([false, true, true])).toBe('2 of 3 seasons meet the goal')
    expect(meetWords([])).toBe('')
  })
})
