import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, openSheet, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'

describe.skipIf(!haveBrowser())('a season on the page', () => {
  const { visit, url } = visits()

  it('shows ranges on a first visit', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    expect(await headlines(page).count()).toBeGreaterThan(2)
    expect(await figureOf(page, 'syrup')).toMatch(/^[\d.,]+ gal$/)
    expect(await page.locator('.headline[data-line="syrup"] .between').innerText()).toMatch(/^[\d.,]+ gal to [\d.,]+ gal$/)
    expect(await page.locator('.headline[data-line="syrup"] .goal').innerText()).toMatch(/^at least 20.* gal: .*seasons? of 10$/)
    const strip = rowOf(page, 'sap').getByRole('img')
    expect(await strip.getAttribute('aria-label')).toMatch(/^8 seasons of 10 fall between .* gal and .* gal; middle .* gal$/)
    expect(troubles).toEqual([])
  })

  it('changes the headline numbers with the fuel', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const figures = async (): Promise<string> => (await page.locator('.headline .figure').allInnerTexts()).join(', ')
    const before = await figures()
    await page.getByRole('combobox', { name: 'What we burn' }).selectOption({ label: 'Propane by the gallon' })
    const withPropane = await changedFrom(figures, before)
    await page.getByRole('combobox', { name: 'What we burn' }).selectOption({ label: 'Old hardwood pallets' })
    expect(await changedFrom(figures, withPropane)).toBe(before)
  })

  it('reckons as a number is typed', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const before = await figureOf(page, 'syrup')
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('70')
    await changedFrom(() => figureOf(page, 'syrup'), before)
    expect(await rowOf(page, 'taps').locator('.comes-to').innerText()).toBe('70 taps')
  })

  it('takes the three numbers of a guess one after another, however fast', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await page.getByRole('textbox', { name: 'Sap from one tap, low' }).fill('3')
    await page.getByRole('textbox', { name: 'Sap from one tap, likely' }).fill('5')
    await page.getByRole('textbox', { name: 'Sap from one tap, high' }).fill('8')
    await rowOf(page, 'sap_per_tap').getByText('3 gal/tap to 8 gal/tap', { exact: true }).waitFor()
    expect(await rowOf(page, 'sap_per_tap').locator('.figure').innerText()).toBe('5 gal/tap')
  })

  it('says what is not a number and leaves the sheet alone', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const field = page.getByRole('textbox', { name: 'Taps hung', exact: true })
    await field.fill('many')
    expect(await rowOf(page, 'taps').getByRole('alert').innerText()).toBe('“many” is not a number')
    await field.press('Escape')
    expect(await field.inputValue()).toBe('140')
  })

  it('marks a wrong formula under its span until it is put right', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const row = rowOf(page, 'sap')
    const edit = async (formula: string): Promise<void> => {
      await row.locator('button.formula').click()
      await row.locator('textarea').fill(formula)
      await row.locator('textarea').press('Enter')
    }
    await edit('taps * sap_per_tapp')
    const diagnosis = row.locator('.diagnosis.error')
    await diagnosis.waitFor()
    expect(await diagnosis.getAttribute('data-code')).toBe('unknown-name')
    expect(await diagnosis.locator('mark').innerText()).toBe('sap_per_tapp')
    expect(await diagnosis.innerText()).toContain('sap_per_tap')
    await edit('taps * sap_per_tap + syrup_brix')
    await page.waitForFunction(() => document.querySelector('tr[data-line="sap"] .diagnosis')?.getAttribute('data-code') === 'unit-mismatch')
    await edit('taps * sap_per_tap')
    await diagnosis.waitFor({ state: 'detached' })
    await page.waitForFunction(() => / gal$/.test(document.querySelector('tr[data-line="sap"] .figure')?.textContent ?? ''))
  })

  it('shows results in metric and back, and leaves the sheet as it was written', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const before = await figureOf(page, 'syrup')
    await page.getByRole('radio', { name: 'metric' }).check()
    expect(await changedFrom(() => figureOf(page, 'syrup'), before)).toMatch(/ L$/)
    expect(await rowOf(page, 'sap_per_tap').locator('.unit').innerText()).toBe('gal/tap')
    await page.getByRole('radio', { name: 'as written' }).check()
    await page.waitForFunction((was) => document.querySelector('.headline[data-line="syrup"] .figure')?.textContent === was, before)
  })

  it('asks nothing of any other host', async () => {
    const { page, requests } = await visit()
    await openSheet(page, pallets)
    await page.getByText('What a formula may use').click()
    await page.locator('.functions dt').first().waitFor()
    const origin = new URL(url()).origin
    expect(requests.length).toBeGreaterThan(4)
    expect(requests.filter((request) => !request.startsWith(origin))).toEqual([])
  })
})
