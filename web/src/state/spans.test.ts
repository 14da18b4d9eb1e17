import { describe, expect, it } from 'vitest'
import { cutAt } from './spans.ts'

describe('cutAt', () => {
  it('cuts at the span', () => {
    expect(cutAt('taps * spa_per_tap', { from: 7, to: 18 })).toEqual({ before: 'taps * ', marked: 'spa_per_tap', after: '' })
  })

  it('counts code points, not the halves a browser counts', () => {
    expect(cutAt('"🍁" + °x', { from: 6, to: 8 })).toEqual({ before: '"🍁" + ', marked: '°x', after: '' })
  })

  it('leaves an empty mark where something is missing', () => {
    expect(cutAt('taps *', { from: 6, to: 6 })).toEqual({ before: 'taps *', marked: '', after: '' })
  })

  it('draws a span beyond the text back into it', () => {
    expect(cutAt('taps', { from: 9, to: 12 })).toEqual({ before: 'taps', marked: '', after: '' })
    expect(cutAt('taps', { from: 2, to: 99 })).toEqual({ before: 'ta', marked: 'ps', after: '' })
    expect(cutAt('taps', { from: 3, to: 1 })).toEqual({ before: 'tap', marked: '', after: 's' })
  })
})
