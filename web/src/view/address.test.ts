import { describe, expect, it } from 'vitest'
import { addressOf, pageIn, sheetIn, shelfAddress } from './address.ts'

describe('addresses', () => {
  it('come back as the name they were made of', () => {
    for (const name of ['heron-ridge.yaml', 'my sheet.yaml', 'été #2.yml', '50%.yaml']) expect(sheetIn(addressOf(name))).toBe(name)
  })

  it('name no sheet for the list, nothing, or what cannot be decoded', () => {
    for (const address of [shelfAddress, '', '#other', '#sheet/%E0%A4%A']) expect(sheetIn(address)).toBeUndefined()
  })

  it('name a page of a sheet', () => {
    expect(addressOf('a.yaml', 'lay-in')).toBe('#sheet/a.yaml/lay-in')
    for (const name of ['a.yaml', 'a/b.yaml']) {
      const address = addressOf(name, 'side-by-side')
      expect([sheetIn(address), pageIn(address)]).toEqual([name, 'side-by-side'])
    }
  })

  it('name the sheet itself where no such page is', () => {
    for (const address of [addressOf('a.yaml'), '#sheet/a.yaml/elsewhere', shelfAddress, '']) expect(pageIn(address)).toBe('sheet')
  })
})
