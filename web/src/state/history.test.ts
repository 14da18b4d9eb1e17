import { describe, expect, it } from 'vitest'
import { back, changed, forth, type History, isNewStep, noHistory, type Step } from './history.ts'

const step = (text: string, mark = '', at = 0): Step => ({ text, what: text, mark, at })
const texts = (history: History): string => `${history.past.map((s) => s.text).join(' ')} | ${history.future.map((s) => s.text).join(' ')}`

describe('a history', () => {
  it('goes back and forth over the same texts', () => {
    let history = ['a', 'b', 'c'].reduce((h, text) => changed(h, step(text)), noHistory)
    let now = 'd'
    const seen: string[] = []
    const go = (way: typeof back): void => {
      const to = way(history, now)
      if (to === undefined) return
      history = to.history
      now = to.text
      seen.push(now)
    }
    for (const way of [back, back, back, back, forth, forth, back, forth, forth, forth]) go(way)
    expect(seen.join(' ')).toBe('c b a b c b c d')
    expect(texts(history)).toBe('a b c | ')
  })

  it('forgets what was undone once something else is changed', () => {
    const gone = back(changed(changed(noHistory, step('a')), step('b')), 'c')
    const history = changed(gone?.history ?? noHistory, step('b'))
    expect(texts(history)).toBe('a b | ')
    expect(forth(history, 'x')).toBeUndefined()
  })

  it('takes what is typed in one go as one step', () => {
    const typed = changed(changed(noHistory, step('a', 'taps', 0)), step('b', 'taps', 1400))
    expect(texts(typed)).toBe('a | ')
    const on = changed(typed, step('c', 'taps', 2800))
    expect(texts(on)).toBe('a | ')
    expect(isNewStep(typed, on)).toBe(false)
    for (const later of [step('d', 'taps', 4400), step('d', 'fuel', 2900), step('d', '', 2900)]) {
      const next = changed(on, later)
      expect(texts(next)).toBe('a d | ')
      expect(isNewStep(on, next)).toBe(true)
    }
  })

  it('keeps the last two hundred steps', () => {
    const long = Array.from({ length: 250 }, (_, i) => step(String(i))).reduce(changed, noHistory)
    expect(long.past).toHaveLength(200)
    expect(long.past[0]?.text).toBe('50')
  })
})
