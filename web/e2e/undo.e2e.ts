import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, openSheet, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'

describe.skipIf(!haveBrowser())('going back and forth', () => {
  const { visit } = visits()

  it('undoes ten changes and does them again, by key and by button', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const syrup = (): Promise<string> => figureOf(page, 'syrup')
    const taps = page.getByRole('textbox', { name: 'Taps hung', exact: true })
    const room = page.getByRole('textbox', { name: 'Room to store sap', exact: true })
    const seen = [await syrup()]
    // Two lines in turn, so that each change is one of its own.
    for (let i = 1; i <= 5; i++) {
      await taps.fill(String(140 - 20 * i))
      seen.push(await changedFrom(syrup, seen.at(-1) ?? ''))
      await room.fill(String(165 + i))
      await page.getByText('Last changed: Room to store sap.').waitFor()
    }
    expect(new Set(seen).size).toBe(6)
    for (let i = 10; i >= 1; i--) {
      await page.keyboard.press('Control+z')
      await page.waitForFunction((n) => document.querySelector('.last-change')?.textContent?.includes('Last changed') === n > 1, i)
      await page.waitForFunction((was) => document.querySelector('.headline[data-line="syrup"] .figure')?.textContent === was, seen[Math.floor(i / 2)])
    }
    expect(await taps.inputValue()).toBe('140')
    expect(await room.inputValue()).toBe('165')
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
    await page.getByRole('button', { name: /^Do again/ }).click()
    expect(await changedFrom(syrup, seen[0] ?? '')).toBe(seen[1])
    await page.keyboard.press('Control+Shift+z')
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>('tr[data-line="store"] input')?.value === '166')
    expect(troubles).toEqual([])
  })

  it('takes what was typed in one go back at one stroke, even from within the field', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const taps = page.getByRole('textbox', { name: 'Taps hung', exact: true })
    const before = await figureOf(page, 'syrup')
    await taps.click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('85', { delay: 60 })
    const after = await changedFrom(() => figureOf(page, 'syrup'), before)
    await page.keyboard.press('Control+z')
    expect(await changedFrom(() => figureOf(page, 'syrup'), after)).toBe(before)
    expect(await taps.inputValue()).toBe('140')
    expect(await page.evaluate(() => document.activeElement?.closest('tr')?.getAttribute('data-line'))).toBe('taps')
  })

  it('shows how it stood before the last change, and only that', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const syrup = page.locator('.headline[data-line="syrup"]')
    const before = await figureOf(page, 'syrup')
    expect(await page.locator('.season .was').count()).toBe(0)
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('100')
    await changedFrom(() => figureOf(page, 'syrup'), before)
    expect(await syrup.locator('.was').first().innerText()).toBe(`was ${before}`)
    expect(await syrup.locator('.strip .before').count()).toBe(1)
    expect(await syrup.locator('.twenty .before').count()).toBe(1)
    expect(await syrup.locator('.twenty rect').count()).toBe(20)
    expect(await syrup.locator('.twenty').getAttribute('aria-label')).toMatch(/^Twenty seasons.*; \d+ of 20 seasons meet the goal$/)
    const second = await figureOf(page, 'syrup')
    await page.getByRole('combobox', { name: 'What we burn' }).selectOption({ label: 'Propane by the gallon' })
    await page.getByText('Last changed: What we burn.').waitFor()
    await page.waitForFunction((was) => document.querySelector('.headline[data-line="syrup"] .was')?.textContent !== `was ${was}`, before)
    const was = syrup.locator('.was')
    if ((await was.count()) > 0) expect(await was.first().innerText()).toBe(`was ${second}`)
    await page.getByRole('radio', { name: 'metric' }).check()
    await page.locator('.season .was').first().waitFor({ state: 'detached' })
  })

  it('keeps the outcomes in sight at the foot of a narrow window', async () => {
    const { page } = await visit({ viewport: { width: 390, height: 800 } })
    await openSheet(page, pallets)
    await rowOf(page, 'brick_price').scrollIntoViewIfNeeded()
    const foot = page.locator('.at-foot')
    await foot.waitFor()
    expect(await foot.innerText()).toContain('Syrup made')
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0)
  })
})
