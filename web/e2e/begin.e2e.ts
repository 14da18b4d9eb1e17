import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'

const title = (page: Page): Promise<string> => page.getByRole('heading', { level: 1 }).innerText()

async function drop(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([name, text]) => {
      const transfer = new DataTransfer()
      transfer.items.add(new File([text], name))
      return transfer
    },
    [name, text] as const,
  )
  await page.dispatchEvent('body', 'dragover', { dataTransfer: data })
  await page.getByText('Let go to open the sheet').waitFor()
  await page.dispatchEvent('body', 'drop', { dataTransfer: data })
}

describe.skipIf(!haveBrowser())('beginning', () => {
  const { visit, url } = visits()

  it('opens a first visit on the finished example, with a word that can be put away for good', async () => {
    const { page, troubles } = await visit({ at: '' })
    await page.getByRole('heading', { level: 1, name: pallets }).waitFor()
    await headlines(page).first().waitFor()
    const word = page.getByRole('complementary', { name: 'What you are looking at' })
    expect(await word.innerText()).toContain('The season in short')
    await word.getByRole('button', { name: 'Put this away' }).click()
    await word.waitFor({ state: 'detached' })
    await page.reload()
    await headlines(page).first().waitFor()
    expect(await word.count()).toBe(0)
    expect(troubles).toEqual([])

    const again = await page.context().newPage()
    await again.goto(url())
    await again.getByRole('heading', { name: 'Sheets to start from' }).waitFor()
  })

  it('shows a first visit its season before the reckoner is there, and takes a change meanwhile', async () => {
    const { page: other } = await visit()
    const fresh = await other.context().browser()?.newContext()
    if (fresh === undefined) throw new Error('no browser')
    const page = await fresh.newPage()
    let letGo = (): void => undefined
    const held = new Promise<void>((resolve) => (letGo = resolve))
    await page.route(/reckoner\.wasm/, async (route) => {
      await held
      await route.continue()
    })
    await page.goto(url())
    await headlines(page).first().waitFor()
    const before = await figureOf(page, 'syrup')
    expect(before).toMatch(/^[\d.]+ gal$/)
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('60')
    letGo()
    await changedFrom(() => figureOf(page, 'syrup'), before)
    expect(await rowOf(page, 'taps').locator('.comes-to').innerText()).toBe('60 taps')
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('140')
    await rowOf(page, 'taps').locator('.comes-to', { hasText: '140 taps' }).waitFor()
    expect(await changedFrom(() => figureOf(page, 'syrup'), '')).toBe(before)
  })

  it('makes a sheet from answers to eight questions, by key alone', async () => {
    const { page, troubles } = await visit()
    await page.getByRole('navigation').or(page.locator('.doings')).getByRole('link', { name: 'New sheet' }).click()
    await page.getByRole('heading', { name: 'A sheet of your own' }).waitFor()
    await page.getByLabel('Taps', { exact: true }).focus()
    for (const key of ['6', '0', 'Tab', 'ArrowDown', 'Tab']) await page.keyboard.press(key)
    expect(await page.getByRole('radio', { name: 'tubing, no pump' }).isChecked()).toBe(true)
    await page.keyboard.type('36')
    await page.keyboard.press('Tab')
    await page.keyboard.type('24')
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Tab')
    await page.keyboard.type('Propane')
    await page.keyboard.press('Tab')
    await page.keyboard.type('8')
    await page.keyboard.press('Tab')
    await page.keyboard.type('5')
    await page.keyboard.press('Tab')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Tab')
    await page.keyboard.type('25')
    await page.keyboard.press('Tab')
    await page.keyboard.type('18')
    await page.keyboard.press('Tab')
    await page.keyboard.type('Creek side')
    await page.keyboard.press('Enter')

    await page.getByRole('heading', { level: 1, name: 'Creek side' }).waitFor()
    await headlines(page).first().waitFor()
    expect(page.url()).toContain('creek-side.yaml')
    expect(await rowOf(page, 'taps').locator('.comes-to').innerText()).toBe('60 taps')
    expect(await rowOf(page, 'pan_area').locator('.comes-to').innerText()).toMatch(/^(864 in²|6(\.00)? ft²)$/)
    expect(await page.getByRole('combobox', { name: 'What we burn' }).inputValue()).toBe('propane')
    expect(await rowOf(page, 'taps_over').locator('.comes-to').innerText()).toBe('0 taps')
    expect(await figureOf(page, 'syrup')).toMatch(/^[\d.]+ gal$/)
    expect(await page.locator('.diagnosis').count()).toBe(0)
    expect(await page.locator('.notice.news').innerText()).toContain('made from your answers')
    expect(troubles).toEqual([])

    await page.reload()
    await headlines(page).first().waitFor()
    expect(await title(page)).toBe('Creek side')
  })

  it('makes one from no answers too, and asks again for what is no number', async () => {
    const { page } = await visit({ at: '#new' })
    await page.getByLabel('Taps', { exact: true }).fill('many')
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    expect(await page.locator('.senseless').innerText()).toBe('wants a number')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('ask-taps')
    await page.getByLabel('Taps', { exact: true }).fill('')
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    await page.getByRole('heading', { level: 1, name: 'Our own season' }).waitFor()
    await headlines(page).first().waitFor()
    expect(await rowOf(page, 'taps').locator('.comes-to').innerText()).toBe('140 taps')
    expect(await page.locator('.diagnosis').count()).toBe(0)
  })

  it('opens a file that is dropped on the page, and beside the one of that name when it differs', async () => {
    const { page } = await visit()
    const text = (taps: number): string =>
      `thawbook: 1\ntitle: Dropped ${taps}\nchapters:\n  - title: Sap\n    lines: [{id: taps, label: Taps hung, is: ${taps}, unit: tap}]\n`
    await drop(page, 'dropped.yaml', text(3))
    await page.getByRole('heading', { level: 1, name: 'Dropped 3' }).waitFor()
    expect(page.url()).toContain('#sheet/dropped.yaml')
    await drop(page, 'dropped.yaml', text(4))
    await page.getByRole('heading', { level: 1, name: 'Dropped 4' }).waitFor()
    expect(page.url()).toContain('#sheet/dropped-2.yaml')
    await page.goBack()
    await page.getByRole('heading', { level: 1, name: 'Dropped 3' }).waitFor()
  })

  it('keeps the head of the file for whoever answered', async () => {
    const { page } = await visit({ at: '#new' })
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    await page.getByRole('heading', { level: 1, name: 'Our own season' }).waitFor()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save this sheet' }).click()
    const text = await readFile(await (await download).path(), 'utf8')
    expect(text.startsWith('# Made from a few answers')).toBe(true)
    expect(text).not.toContain('from:')
  })
})
