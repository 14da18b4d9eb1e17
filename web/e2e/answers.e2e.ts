import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { axe, overflow } from './axe.ts'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, openSheet, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'
const pages = ['Side by side', 'What moves it', 'Prices', 'To lay in', 'Words and functions'] as const

/** Goes to one of the sheet's pages by its link, and waits until nothing on it is being worked out. */
async function lookAt(page: Page, name: string): Promise<Locator> {
  await page.getByRole('navigation', { name: 'Pages of this sheet' }).getByRole('link', { name }).click()
  const here = page.locator('.answer-page')
  await here.waitFor()
  await settled(page)
  return here
}

async function settled(page: Page): Promise<void> {
  // Twice, because one answer may be what the next question hangs on.
  for (let i = 0; i < 2; i++) {
    await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null)
    await page.waitForTimeout(100)
  }
}

const tableOf = (here: Page | Locator, name: string | RegExp): Locator => here.getByRole('table', { name })

describe.skipIf(!haveBrowser())('answers on the page', () => {
  const { visit } = visits()

  it('shows cost and hours move with the fuel', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const hours = await figureOf(page, 'fire_hours')
    const cost = await figureOf(page, 'full_cost')
    await page.getByRole('combobox', { name: 'What we burn' }).selectOption({ label: 'Propane by the gallon' })
    expect(await changedFrom(() => figureOf(page, 'fire_hours'), hours)).toMatch(/ h$/)
    expect(await figureOf(page, 'full_cost')).not.toBe(cost)
  })

  it('takes a scenario, changes it, sets it beside its sheet, and takes the change back', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const before = await figureOf(page, 'syrup')
    await lookAt(page, 'Side by side')
    await page.getByLabel('What if? Take a scenario from this sheet, and call it').fill('Heron Ridge, more taps')
    await page.getByRole('button', { name: 'Take the scenario' }).click()
    await page.getByRole('heading', { level: 1, name: 'Heron Ridge, more taps' }).waitFor()
    expect(page.url()).toContain('heron-ridge-more-taps.yaml')
    await page.locator('.headline').first().waitFor()
    expect(await figureOf(page, 'syrup')).toBe(before)
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('180')
    await changedFrom(() => figureOf(page, 'syrup'), before)

    const here = await lookAt(page, 'Side by side')
    const change = tableOf(here, 'What this scenario says otherwise').getByRole('row', { name: /Taps hung/ })
    await change.waitFor()
    expect(await change.getByRole('cell').allInnerTexts()).toEqual(['140 taps', '180 taps', 'Take back'])
    expect(await here.getByRole('checkbox', { name: pallets }).isChecked()).toBe(true)
    const syrup = tableOf(here, 'Each outcome, sheet by sheet').getByRole('row', { name: /^Syrup made/ })
    await syrup.waitFor()
    expect(await syrup.getByRole('cell').last().innerText()).toMatch(/^[\d.]+ gal less \(.+ less to .+\)$/m)
    expect(await syrup.getByRole('img').count()).toBe(2)

    await change.getByRole('button', { name: 'Take back the change of Taps hung' }).click()
    await page.getByText('Nothing yet. Change a line on its sheet, and it stands here.').waitFor()
    await page.getByRole('link', { name: 'The sheet', exact: true }).click()
    await page.waitForFunction(() => document.querySelector<HTMLInputElement>('input[aria-label="Taps hung"]')?.value === '140')
    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'Heron Ridge, more taps' }).waitFor()

    // What it does not change follows the sheet it is taken from.
    await page.getByRole('link', { name: pallets }).click()
    await page.getByRole('heading', { level: 1, name: pallets }).waitFor()
    await page.locator('.headline').first().waitFor()
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('100')
    await changedFrom(() => figureOf(page, 'syrup'), before)
    await page.goBack()
    await page.waitForFunction(() => document.querySelector('h1')?.textContent === 'Heron Ridge, more taps' && document.querySelector<HTMLInputElement>('input[aria-label="Taps hung"]')?.value === '100')
    expect(troubles).toEqual([])
  })

  it('compares up to four, says what explains the difference, and draws where it turns', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const here = await lookAt(page, 'Side by side')
    await here.getByRole('checkbox', { name: 'Heron Ridge, our own cordwood' }).uncheck()
    await here.getByRole('checkbox', { name: 'Heron Ridge, propane' }).check()
    await here.getByText(/^Propane comes to .* in the middle season/).waitFor()
    await settled(page)
    await here.getByRole('img', { name: /^What each change does to the mean/ }).waitFor()
    const curve = here.getByRole('img', { name: /The same numbers stand in the table below/ })
    await curve.waitFor()
    expect(await curve.locator('path').count()).toBeGreaterThan(1)
    await here.getByText('The curve as numbers').click()
    expect(await tableOf(here, /^propane less old pallets as/).getByRole('row').count()).toBeGreaterThan(15)
    expect(await tableOf(here, 'What it is worth to know, for one season').getByRole('row').count()).toBeGreaterThan(2)

    const turns = here.locator('.one-flip p').first()
    const before = await turns.innerText()
    await here.getByRole('combobox', { name: 'As this changes' }).selectOption('worth')
    expect(await changedFrom(() => turns.innerText(), before)).toMatch(/an hour|\/h/)

    await here.getByRole('checkbox', { name: 'Heron Ridge, our own cordwood' }).check()
    await here.getByRole('checkbox', { name: 'Heron Ridge, the lower grove' }).check()
    await page.waitForFunction(() => document.querySelectorAll('table.answers thead')[0]?.querySelectorAll('th').length === 5)
    expect(troubles).toEqual([])
  })

  it('says what moves an outcome, in a picture and in a table', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const here = await lookAt(page, 'What moves it')
    await here.getByRole('combobox', { name: 'Outcome' }).selectOption({ label: 'Syrup made' })
    const picture = here.getByRole('img', { name: /^How syrup made swings/ })
    await picture.waitFor()
    expect(await picture.getAttribute('aria-label')).toContain('Sugar in the sap, 1.6 °Bx to 2.5 °Bx')
    const row = tableOf(here, 'What makes syrup made differ from season to season').getByRole('row', { name: /^Sugar in the sap/ })
    expect((await row.getByRole('cell').allInnerTexts()).at(-1)).toMatch(/ gal at 2\.5 °Bx$/)
    expect(troubles).toEqual([])
  })

  it('tries a price aside, and puts it in the sheet when told', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const takings = await figureOf(page, 'takings')
    const here = await lookAt(page, 'Prices')
    await here.getByRole('slider', { name: 'Pint, price', exact: true }).fill('20')
    const outcome = tableOf(here, 'What it does to the season').getByRole('row', { name: /^Takings/ })
    await outcome.waitFor()
    const [stands, so] = await outcome.getByRole('cell').allInnerTexts()
    expect(stands).toBe(takings)
    expect(so).not.toBe(takings)
    await here.getByRole('button', { name: 'Put these in the sheet' }).click()
    await page.getByRole('link', { name: 'The sheet', exact: true }).click()
    expect(await changedFrom(() => figureOf(page, 'takings'), takings)).toBe(so)
    expect(troubles).toEqual([])
  })

  it('finds the prices that pay a wage, and shows the ladder and what others got', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const here = await lookAt(page, 'Prices')
    await here.getByLabel('An hour should bring, in USD').fill('5')
    const paid = tableOf(here, 'Prices that pay $5.00/h')
    await paid.waitFor()
    expect(await paid.getByRole('row', { name: /^Pint / }).getByRole('cell').first().innerText()).toMatch(/^\$[\d.]+\/jar$/)
    expect(await here.getByRole('img', { name: /^Price by volume: Gallon/ }).count()).toBe(1)
    expect(await tableOf(here, /^What others got in 20\d\d/).getByRole('row').count()).toBeGreaterThan(2)
    expect(troubles).toEqual([])
  })

  it('lists what to lay in, for more seasons or fewer, and keeps what is ticked', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const here = await lookAt(page, 'To lay in')
    const fuel = here.locator('li[data-line="fuel_needed"]')
    await fuel.waitFor()
    const nine = await fuel.locator('.lay-in-buy').innerText()
    expect(nine).toMatch(/^\d+ units$/)
    await here.getByRole('combobox', { name: 'So that each thing lasts in' }).selectOption({ label: '5 seasons of 10' })
    const five = await changedFrom(() => fuel.locator('.lay-in-buy').innerText(), nine)
    expect(parseInt(five)).toBeLessThan(parseInt(nine))
    await fuel.getByRole('checkbox').check()
    await page.reload()
    await fuel.waitFor()
    expect(await fuel.getByRole('checkbox').isChecked()).toBe(true)
    expect(troubles).toEqual([])
  })

  it('opens where a number comes from, down to the guesses, and goes back to it', async () => {
    const { page, troubles } = await visit()
    await openSheet(page, pallets)
    const number = page.locator('.headline[data-line="sap"] .figure, .headline[data-line="syrup"] .figure').first()
    await number.focus()
    await page.keyboard.press('Enter')
    const dialog = page.getByRole('dialog', { name: 'Syrup made: how it comes to this' })
    const steps = dialog.locator('summary')
    await steps.first().waitFor()
    expect(await dialog.locator('.step-worked').first().innerText()).toMatch(/\d/)
    for (const step of ['Sap boiled', 'Sap ready to boil', 'Sap in the buckets']) await dialog.locator('summary', { hasText: step }).first().click()
    await dialog.getByText('taps * sap_per_tap', { exact: true }).waitFor()
    await dialog.locator('.step.leaf, summary', { hasText: 'Sap from one tap' }).first().waitFor()
    await dialog.getByRole('radio', { name: 'in a 1-in-10 low season' }).check()
    await dialog.getByText(/^Worked in season [\d,]+ of 10,000/).waitFor()
    await page.keyboard.press('Escape')
    await dialog.waitFor({ state: 'detached' })
    expect(await number.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(troubles).toEqual([])
  })

  it('opens it from the grid by key', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await page.locator('tr[data-line="sap"] td.comes-to').focus()
    await page.keyboard.press('Enter')
    await page.getByRole('dialog', { name: 'Sap in the buckets: how it comes to this' }).waitFor()
  })

  it('finds a function or a word by what is sought', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const here = await lookAt(page, 'Words and functions')
    await here.getByText('boil_heat', { exact: false }).first().waitFor()
    await here.getByLabel('Look for').fill('hydrometer')
    await page.waitForFunction(() => document.querySelectorAll('.words dt').length < 5)
    expect(await here.locator('.words dt, dt').first().innerText()).toContain('hydrometer')
    await here.getByLabel('Look for').fill('scenario')
    await here.getByText('A sheet taken from another with a few changes.').waitFor()
  })

  it('has an address for each page, and goes back and forward between them', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await lookAt(page, 'To lay in')
    expect(page.url()).toMatch(/#sheet\/heron-ridge-pallets\.yaml\/lay-in$/)
    expect(await page.title()).toBe(`To lay in · ${pallets} · Thawbook`)
    await page.goBack()
    await page.locator('.headline').first().waitFor()
    await page.goForward()
    await page.reload()
    await page.getByRole('heading', { name: 'To lay in before the season' }).waitFor()
    expect(await page.getByRole('navigation', { name: 'Pages of this sheet' }).locator('[aria-current="page"]').innerText()).toBe('To lay in')
  })

  for (const colorScheme of ['light', 'dark'] as const) {
    it(`passes axe on every page in ${colorScheme}`, async () => {
      const { page } = await visit({ colorScheme })
      await openSheet(page, pallets)
      for (const name of pages) {
        await lookAt(page, name)
        expect(await axe(page), name).toEqual([])
      }
      await page.getByRole('link', { name: 'The sheet', exact: true }).click()
      await page.locator('.headline button.figure').first().click()
      await page.locator('dialog .step').first().waitFor()
      expect(await axe(page), 'where a number comes from').toEqual([])
    })
  }

  for (const width of [320, 700]) {
    it(`fits ${width} pixels`, async () => {
      const { page } = await visit({ viewport: { width, height: 800 } })
      await openSheet(page, pallets)
      for (const name of pages) {
        await lookAt(page, name)
        expect(await overflow(page), name).toBe(0)
        expect(await axe(page), name).toEqual([])
      }
      await page.getByRole('link', { name: 'The sheet', exact: true }).click()
      await page.locator('.headline button.figure').first().click()
      await page.locator('dialog .step').first().waitFor()
      expect(await page.locator('dialog').evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0)
    })
  }
})
