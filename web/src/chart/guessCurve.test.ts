import { describe, expect, it } from 'vitest'
import { drawGuess } from './guessCurve.ts'

const roof = [{ at: 0, height: 0 }, { at: 5, height: 1 }, { at: 10, height: 0 }]
const size = { width: 100, height: 40 }

describe('drawGuess', () => {
  it('fills what falls between low and high', () => {
    expect(drawGuess(roof, { low: 2.5, likely: 5, high: 7.5 }, size)).toEqual({
      outline: 'M0 40L50 0L100 40',
      inside: 'M25 40L25 20L50 0L75 20L75 40Z',
      low: 25,
      likely: 50,
      high: 75,
    })
  })

  it('makes room for numbers beyond the curve', () => {
    const drawing = drawGuess(roof, { low: -10, likely: 5, high: 10 }, size)
    expect(drawing?.low).toBe(0)
    expect(drawing?.outline).toBe('M50 40L75 0L100 40')
    expect(drawing?.inside).toBe('M0 40L0 40L50 40L75 0L100 40L100 40Z')
  })

  it('draws nothing of what has no width', () => {
    expect(drawGuess([], { low: 1, likely: 1, high: 1 }, size)).toBeUndefined()
    expect(drawGuess([{ at: 1, height: 1 }], { low: 1, likely: 1, high: 1 }, size)).toBeUndefined()
  })
})
