import { describe, expect, it } from 'vitest'
import type { Answer, Reckoning } from './protocol.ts'
import { layOver, readAnswer, readReckoning, readView, Refused } from './read.ts'

describe('readAnswer', () => {
  it('throws what the door refuses', () => {
    const refusal = '{"error":{"code":"edit-unknown","message":"no line \\"tap\\"","hint":"did you mean \\"taps\\"?"}}'
    expect(() => readAnswer(refusal)).toThrow(Refused)
    try {
      readAnswer(refusal)
    } catch (reason) {
      expect(reason).toMatchObject({ code: 'edit-unknown', message: 'no line "tap"', hint: 'did you mean "taps"?' })
    }
  })

  it('gives anything else as it is', () => {
    expect(readAnswer('{"name":"a"}')).toEqual({ name: 'a' })
    expect(readAnswer('null')).toBeNull()
  })
})

describe('readView', () => {
  it('puts an empty list where Go wrote null', () => {
    const view = readView(
      '{"title":"T","about":"","money":"USD","seasons":1,"seed":1,"source":"","diagnostics":null,"chapters":[{"title":"C","lines":null,"tables":[{"id":"t","label":"T","columns":null,"rows":[{"id":"r","label":"R","cells":null}]}]},{"title":"D","lines":[],"tables":null}]}',
    )
    expect(view.diagnostics).toEqual([])
    expect(view.chapters[0]?.lines).toEqual([])
    expect(view.chapters[0]?.tables[0]?.rows[0]?.cells).toEqual([])
    expect(view.chapters[1]?.tables).toEqual([])
  })
})

describe('readReckoning', () => {
  it('puts an empty list where Go wrote null', () => {
    const said = readReckoning('{"title":"T","seasons":1,"seed":1,"lines":null,"warnings":null,"cautions":null,"paragraph":""}')
    expect([said.lines, said.warnings, said.cautions]).toEqual([[], [], []])
  })
})

describe('layOver', () => {
  const answer = (id: string, middle: string): Answer => ({ id, shown: { middle } }) as Answer
  const reckoning = (paragraph: string, lines: Answer[], changed = false): Reckoning => ({ paragraph, lines, changed }) as Reckoning
  const told = reckoning('before', [answer('a', '1'), answer('b', '2'), answer('c', '3')])

  it('puts what was told again in the place of what was told before', () => {
    const now = layOver(told, reckoning('after', [answer('b', '9')], true))
    expect(now.lines.map((l) => l.shown.middle)).toEqual(['1', '9', '3'])
    expect(now.paragraph).toBe('after')
  })

  it('takes a reckoning in whole as it is', () => {
    const whole = reckoning('after', [answer('d', '9')])
    expect(layOver(told, whole)).toBe(whole)
  })
})
