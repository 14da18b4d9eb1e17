import { writeFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, visits } from './visit.ts'

/** How many pages a PDF has. */
const pagesOf = (pdf: Buffer): number => (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length

/** The plan as it would be printed now. */
async function planText(page: Page): Promise<string> {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
  await page.emulateMedia({ media: 'print' })
  const text = await page.locator('#plan').innerText()
  await page.evaluate(() => dispatchEvent(new Event('afterprint')))
  await page.emulateMedia({ media: null })
  return text
}

describe.skipIf(!haveBrowser())('the printed plan', () => {
  const { visit } = visits()

  for (const format of ['Letter', 'A4']) {
    it(`is two pages of ${format} at most, whatever the colours of the screen`, async () => {
      const { page } = await visit({ at: '#sheet/heron-ridge-pallets.yaml', colorScheme: 'dark' })
      await headlines(page).first().waitFor()
      await page.locator('#plan').waitFor({ state: 'attached' })
      const pdf = await page.pdf({ format, preferCSSPageSize: false })
      const kept = process.env['THAWBOOK_SHOTS']
      if (kept !== undefined) await writeFile(`${kept}/plan-${format}.pdf`, pdf)
      expect(pagesOf(pdf)).toBeGreaterThan(0)
      expect(pagesOf(pdf)).toBeLessThanOrEqual(2)
    })
  }

  it('has every line and the sheet’s own numbers, and follows a change', async () => {
    const { page, troubles } = await visit({ at: '#sheet/heron-ridge-pallets.yaml' })
    await headlines(page).first().waitFor()
    await page.locator('#plan').waitFor({ state: 'attached' })
    const before = await figureOf(page, 'syrup')
    const text = await planText(page)
    expect(text).toContain('Heron Ridge, old pallets')
    expect(text).toContain(before)
    const labels = await page.locator('tr[data-line] .line-label').allInnerTexts()
    expect(labels.length).toBeGreaterThan(60)
    const plain = text.replaceAll(/\s+/g, ' ')
    expect(labels.filter((label) => !plain.includes(label.trim().replaceAll(/\s+/g, ' ')))).toEqual([])
    expect(await page.locator('#plan').innerText()).toBe('')

    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('60')
    const after = await changedFrom(() => figureOf(page, 'syrup'), before)
    expect(await planText(page)).toContain(after)
    expect(troubles).toEqual([])
  })
})
