import { createRequire } from 'node:module'
import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { openSheet, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'
const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

const twoLines = `thawbook: 1
title: Two lines
chapters:
  - title: Trees and sap
    lines:
      - {id: taps, label: Taps hung, is: 140, unit: tap, caution: Mind the ladder.}
      - {id: sap_per_tap, label: Sap from one tap, guess: {low: 5, likely: 9, high: 14}, unit: gal/tap}
`

interface Found {
  id: string
  targets: string[]
}

async function axe(page: Page): Promise<Found[]> {
  // Evaluated rather than added as a script: the content policy admits none from a test.
  await page.evaluate(await readFile(axePath, 'utf8'))
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> } }
    const { violations } = await axe.run()
    return violations.map((v) => ({ id: v.id, targets: v.nodes.map((n) => n.target.join(' ')) }))
  })
}

const overflow = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

describe.skipIf(!haveBrowser())('the page for everyone', () => {
  const { visit } = visits()

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`passes axe in ${colorScheme}`, async () => {
      const { page } = await visit({ colorScheme, viewport: { width: 1400, height: 600 } })
      expect(await axe(page)).toEqual([])
      await openSheet(page, pallets)
      const row = rowOf(page, 'sap')
      await row.locator('button.formula').click()
      await row.locator('textarea').fill('taps * nothing')
      await row.locator('.diagnosis.error').waitFor()
      expect(await axe(page)).toEqual([])
    })
  }

  for (const width of [320, 768, 1280, 1920]) {
    it(`never scrolls sideways at ${width} pixels`, async () => {
      const { page } = await visit({ viewport: { width, height: 800 } })
      await page.getByRole('heading', { name: 'Sheets to start from' }).waitFor()
      expect(await overflow(page)).toBe(0)
      await openSheet(page, pallets)
      expect(await overflow(page)).toBe(0)
    })
  }

  it('passes axe where lines are stacked', async () => {
    const { page } = await visit({ viewport: { width: 320, height: 800 } })
    await openSheet(page, pallets)
    expect(await axe(page)).toEqual([])
  })

  it('has one tab stop in a grid, arrows inside it, and a way in and out of its fields', async () => {
    const { page } = await visit()
    await page.getByLabel('A sheet file').setInputFiles({ name: 'two-lines.yaml', mimeType: 'application/yaml', buffer: Buffer.from(twoLines) })
    const grid = page.getByRole('grid', { name: 'Trees and sap', exact: true })
    await grid.locator('.figure').first().waitFor()
    expect(await grid.locator('[tabindex="0"]').count()).toBe(1)
    const focused = (): Promise<string> => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.className ?? '')

    await grid.getByRole('rowheader').first().focus()
    await page.keyboard.press('ArrowRight')
    expect(await focused()).toBe('working')
    await page.keyboard.press('Enter')
    expect(await focused()).toBe('Taps hung')
    await page.keyboard.type('75')
    await page.keyboard.press('Escape')
    expect(await focused()).toBe('working')
    expect(await page.getByRole('textbox', { name: 'Taps hung', exact: true }).inputValue()).toBe('140')

    // Over the caution's one wide cell, and still in the same column.
    await page.keyboard.press('ArrowDown')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Mind the ladder.')
    await page.keyboard.press('ArrowDown')
    expect(await focused()).toBe('working')
    await page.keyboard.press('F2')
    expect(await focused()).toBe('Sap from one tap, low')
    await page.keyboard.press('Tab')
    expect(await focused()).toBe('Sap from one tap, likely')
    await page.keyboard.press('Enter')
    expect(await focused()).toBe('working')
    expect(await grid.locator('[tabindex="0"]').count()).toBe(1)

    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.closest('[role=grid]'))).toBeNull()
  })

  it('goes into a formula by key and comes back with the old one on Escape', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const row = rowOf(page, 'sap')
    await row.locator('td.working').focus()
    await page.keyboard.press('Enter')
    await row.locator('textarea').fill('taps')
    await row.locator('.diagnosis.error').waitFor()
    await page.keyboard.press('Escape')
    await row.locator('.diagnosis.error').waitFor({ state: 'detached' })
    expect(await row.locator('button.formula').innerText()).toBe('taps * sap_per_tap')
    const inCell = (): Promise<boolean> => row.locator('td.working').evaluate((cell) => cell === document.activeElement)
    expect(await inCell()).toBe(true)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await row.locator('textarea').waitFor({ state: 'detached' })
    expect(await inCell()).toBe(true)
  })
})
