import { describe, expect, it } from 'vitest'
import type { Movers, MovingGuess } from '../door/answers.ts'
import { swingsOf, swingsPicture } from './swings.ts'

const guess = (id: string, at_low: number | null, at_high: number | null): MovingGuess => ({
  id, label: `Guess ${id}`, unit: '1', at_low, at_high, direction: '', shown: { low: `${id} low`, high: `${id} high`, at_low: '', at_high: '' },
})
const share = { value: 0.5, about_zero: false, shown: '50 %' }
const moversOf = (...guesses: MovingGuess[][]): Movers => ({
  seasons: 10,
  outcome: { id: 'o', label: 'O', chapter: '', unit: '$', kind: 'formula', at_likely: 5, mean: 5, p05: 1, p10: 2, p50: 5, p90: 8, p95: 9, headline: true, goal_met: null, shown: { likely: '', low: '', middle: '', high: '', mean: '' } },
  movers: guesses.map((g) => ({ guesses: g, label: '', first: share, total: share, interacts: false })),
  apart: null,
  paragraph: '',
})

describe('swingsOf', () => {
  it('puts each of a guess’s ends on the side where it puts the outcome', () => {
    expect(swingsOf(moversOf([guess('up', 1, 9)], [guess('down', 8, 2)]), 5)).toEqual([
      { key: 'up', label: 'Guess up', atLow: 1, atHigh: 9, left: 'up low', right: 'up high' },
      { key: 'down', label: 'Guess down', atLow: 8, atHigh: 2, left: 'down high', right: 'down low' },
    ])
  })

  it('takes guesses that move together one by one, up to so many, and leaves out what has no number', () => {
    const movers = moversOf([guess('a', 1, 2), guess('b', 2, 1)], [guess('none', null, 2)], [guess('c', 0, 1)], [guess('d', 0, 1)])
    expect(swingsOf(movers, 3).map(({ key }) => key)).toEqual(['a', 'b', 'c'])
  })
})

describe('swingsPicture', () => {
  it('grows with its rows and keeps their order from the top', () => {
    const one = swingsPicture(moversOf([guess('a', 1, 2)]), 12, 600)
    const two = swingsPicture(moversOf([guess('b', 1, 2)], [guess('a', 1, 2)]), 12, 600)
    expect(Number(two.height)).toBeGreaterThan(Number(one.height))
    expect(two.y?.domain).toEqual(['b', 'a'])
  })
})
