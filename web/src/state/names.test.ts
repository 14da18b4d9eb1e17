import { describe, expect, it } from 'vitest'
import { freeName } from './names.ts'

describe('freeName', () => {
  const among = (...names: string[]) => (name: string) => names.includes(name)

  it('is the name itself when nobody has it', () => {
    expect(freeName('a.yaml', among())).toBe('a.yaml')
    expect(freeName('season-2026.yaml', among('a.yaml'))).toBe('season-2026.yaml')
  })

  it('counts on from 2, also from a name that was counted before', () => {
    expect(freeName('a.yaml', among('a.yaml'))).toBe('a-2.yaml')
    expect(freeName('a-2.yaml', among('a.yaml', 'a-2.yaml', 'a-3.yaml'))).toBe('a-4.yaml')
    expect(freeName('notes', among('notes'))).toBe('notes-2')
  })
})
