import { describe, expect, it } from 'vitest'
import { gather } from './gather.ts'

describe('gather', () => {
  it('takes each sheet as it was last changed', () => {
    const open = { name: 'mine.yaml', files: { 'mine.yaml': 'before', 'base.yaml': 'as it was' }, view: { source: 'now' } }
    const files = gather({ 'base.yaml': 'shipped', 'other.yaml': 'shipped' }, [{ name: 'base.yaml', files: { 'base.yaml': 'changed' } }], open)
    expect(files).toEqual({ 'base.yaml': 'changed', 'other.yaml': 'shipped', 'mine.yaml': 'now' })
  })

  it('falls back on what a scenario remembers of its sheet', () => {
    expect(gather({}, [{ name: 's.yaml', files: { 's.yaml': 's', 'gone.yaml': 'base' } }], undefined)).toEqual({ 's.yaml': 's', 'gone.yaml': 'base' })
  })
})
