import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { fileNameFor, scenarioText } from './scenario.ts'

describe('scenarioText', () => {
  it('is a scenario file, whatever the names', () => {
    const title = 'More taps: "180", # not 140'
    expect(parse(scenarioText('my sheet.yaml', title))).toEqual({ thawbook: 1, from: 'my sheet.yaml', title, change: {} })
  })
})

describe('fileNameFor', () => {
  it('makes a plain name of a title', () => {
    expect(fileNameFor('Été: 180 taps!', [])).toBe('ete-180-taps.yaml')
    expect(fileNameFor('…', [])).toBe('scenario.yaml')
  })

  it('takes no name that is taken', () => {
    expect(fileNameFor('More taps', ['more-taps.yaml', 'more-taps-2.yaml'])).toBe('more-taps-3.yaml')
  })
})
