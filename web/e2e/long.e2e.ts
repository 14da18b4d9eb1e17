import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, rowOf, visits } from './visit.ts'

const taps = (page: Page) => page.getByRole('textbox', { name: 'Taps hung', exact: true })

describe.skipIf(!haveBrowser())('long work', () => {
  const { visit, url } = visits()

  it('shows how far it is, stops when asked, and leaves the sheet with its change', async () => {
    const { page, troubles } = await visit()
    const text = await (await fetch(new URL('scenarios/heron-ridge-pallets.yaml', url()))).text()
    const long = text.replace('seasons: 10000', 'seasons: 300000')
    expect(long).not.toBe(text)
    await page.getByLabel('A sheet file').setInputFiles({ name: 'long.yaml', mimeType: 'application/yaml', buffer: Buffer.from(long) })
    const stop = page.getByRole('button', { name: 'Stop drawing' })
    await stop.waitFor()
    expect(await page.getByRole('progressbar').getAttribute('max')).toBe('300000')
    await stop.click()
    await page.getByText('Stopped.').waitFor()
    expect(await page.locator('.notice').count()).toBe(0)

    // The page is still there to be used: the sheet, its words, the way to another.
    await page.getByRole('button', { name: 'Draw the seasons after all' }).click()
    await headlines(page).first().waitFor()
    const before = await figureOf(page, 'syrup')
    await taps(page).fill('60')
    await stop.waitFor()
    await stop.click()
    await page.getByText('The sheet has your change').waitFor()
    expect(await taps(page).inputValue()).toBe('60')
    expect(await figureOf(page, 'syrup')).toBe(before)
    await page.reload()
    await headlines(page).first().waitFor()
    expect(await taps(page).inputValue()).toBe('60')
    expect(await figureOf(page, 'syrup')).not.toBe(before)
    expect(troubles).toEqual([])
  })

  it('starts a reckoner again that died while nobody asked it anything', async () => {
    const { page } = await visit({ at: '#sheet/heron-ridge-pallets.yaml' })
    await headlines(page).first().waitFor()
    const before = await figureOf(page, 'syrup')
    // It answers its next call by ending.
    await page.workers()[0]?.evaluate(() => {
      const scope = globalThis as unknown as { thawbook: { call(): never } }
      scope.thawbook.call = () => {
        throw new RangeError('Maximum call stack size exceeded')
      }
    })
    await page.getByRole('radio', { name: 'metric' }).check()
    await page.getByText('was started again').waitFor()
    expect(await changedFrom(() => figureOf(page, 'syrup'), before)).toMatch(/ L$/)
    await page.getByRole('radio', { name: 'as written' }).check()
    await taps(page).fill('90')
    await rowOf(page, 'taps').locator('.comes-to', { hasText: '90 taps' }).waitFor()
  })
})
