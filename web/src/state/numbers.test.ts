import { describe, expect, it } from 'vitest'
import { readNumber, readNumbers, writeNumber, writeNumbers } from './numbers.ts'

describe('readNumber', () => {
  it.each([
    ['140', 140],
    [' 9.25 ', 9.25],
    ['.5', 0.5],
    ['3.', 3],
    ['-1.5', -1.5],
    ['−1.5', -1.5],
    ['+2', 2],
    ['1,240', 1240],
    ['18,000,000.5', 18000000.5],
    ['2e6', 2000000],
    ['1.5E-3', 0.0015],
  ])('reads %j', (typed, value) => {
    expect(readNumber(typed)).toBe(value)
  })

  it.each(['', ' ', '-', '.', '12a', '1,24', '12,3456', '1 2', '0x10', 'Infinity', 'NaN', '1e', '1e999', '4 gal'])(
    'makes no sense of %j',
    (typed) => {
      expect(readNumber(typed)).toBeUndefined()
    },
  )
})

describe('writeNumber', () => {
  it('writes what reads back the same', () => {
    for (const value of [0, 140, 0.1, -1.5, 91452, 18000000, 1e-7]) expect(readNumber(writeNumber(value))).toBe(value)
  })

  it('writes nothing for nothing', () => {
    expect(writeNumber(undefined)).toBe('')
  })
})

describe('readNumbers', () => {
  it('takes commas, semicolons and blanks between', () => {
    expect(readNumbers('7, 12;9  14')).toEqual([7, 12, 9, 14])
  })

  it('passes over a comma at the end, which a person in mid-list has just typed', () => {
    expect(readNumbers('7, 12, ')).toEqual([7, 12])
  })

  it('refuses the whole list for one word', () => {
    expect(readNumbers('7, twelve')).toBeUndefined()
  })

  it('reads back what it wrote', () => {
    expect(readNumbers(writeNumbers([7, 12.5, -1]))).toEqual([7, 12.5, -1])
  })
})
