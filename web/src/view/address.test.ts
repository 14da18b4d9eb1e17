import { describe, expect, it } from 'vitest'
import { addressOf, sheetIn, shelfAddress } from './address.ts'

describe('addresses', () => {
  it('come back as the name they were made of', () => {
    for (const name of ['heron-ridge.yaml', 'my sheet.yaml', 'été #2.yml', '50%.yaml']) expect(sheetIn(addressOf(name))).toBe(name)
  })

  it('name no sheet for the list, nothing, or what cannot be decoded', () => {
    for (const address of [shelfAddress, '', '#other', '#sheet/%E0%A4%A']) expect(sheetIn(address)).toBeUndefined()
  })
})
