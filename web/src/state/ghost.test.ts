import { describe, expect, it } from 'vitest'
import type { Answer } from '../door/protocol.ts'
import { standsOtherwise } from './ghost.ts'

const answer = (middle: string, unit = 'gal', p50: number | null = 1): Answer =>
  ({ id: 'syrup', unit, p50, shown: { low: '1 gal', middle, high: '9 gal', likely: '', mean: '' } }) as unknown as Answer

describe('standsOtherwise', () => {
  it('is how a line stood when it read otherwise', () => {
    const before = answer('20 gal')
    expect(standsOtherwise(answer('21 gal'), before)).toBe(before)
    expect(standsOtherwise(answer('20 gal'), before)).toBeUndefined()
  })

  it('is nothing when the two cannot be laid on one scale', () => {
    expect(standsOtherwise(answer('80 L', 'L'), answer('20 gal'))).toBeUndefined()
    expect(standsOtherwise(answer('20 gal'), answer('no number', 'gal', null))).toBeUndefined()
    expect(standsOtherwise(answer('20 gal'), undefined)).toBeUndefined()
  })
})
