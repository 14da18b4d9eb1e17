import { expect, it } from 'vitest'
import { readAhead } from './ahead.ts'

const view = { name: 'a', title: 'A', money: 'USD', seasons: 1, seed: 1, chapters: null, diagnostics: null, source: 'thawbook: 1\n' }
const reckoning = { title: 'A', seasons: 1, seed: 1, lines: null, warnings: null, cautions: null, paragraph: 'A season.' }

const told = (view: object, reckoning?: object): string => JSON.stringify({ view: JSON.stringify(view), reckoning: JSON.stringify(reckoning) })

it('reads what is of the sheet as it is shipped', () => {
  const ahead = readAhead(told(view, reckoning), view.source)
  expect(ahead?.view.chapters).toEqual([])
  expect(ahead?.reckoning.paragraph).toBe('A season.')
})

it.each([
  ['of another text', told(view, reckoning), 'thawbook: 1 # later\n'],
  ['a refusal', told({ error: { code: 'x', message: 'no' } }, reckoning), view.source],
  ['half of it', told(view), view.source],
  ['no JSON', '<!doctype html>', view.source],
])('takes nothing from %s', (_what, json, text) => expect(readAhead(json, text)).toBeUndefined())
