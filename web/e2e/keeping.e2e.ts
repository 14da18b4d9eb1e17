import { readFile, writeFile, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, openSheet, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'

async function hangTaps(page: Page, taps: string): Promise<string> {
  const before = await figureOf(page, 'syrup')
  await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill(taps)
  return changedFrom(() => figureOf(page, 'syrup'), before)
}

const tapsField = (page: Page): Promise<string> => page.getByRole('textbox', { name: 'Taps hung', exact: true }).inputValue()

describe.skipIf(!haveBrowser())('what the page keeps', () => {
  const { visit, url } = visits()

  it('has the last edit after a reload', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const figure = await hangTaps(page, '90')
    await page.reload()
    await headlines(page).first().waitFor()
    expect(await tapsField(page)).toBe('90')
    expect(await figureOf(page, 'syrup')).toBe(figure)
  })

  it('has it on coming back to the bare address, and can start again without it', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await hangTaps(page, '90')
    const back = await page.context().newPage()
    await page.close()
    await back.goto(url())
    await headlines(back).first().waitFor()
    expect(await tapsField(back)).toBe('90')
    back.on('dialog', (dialog) => void dialog.accept())
    await back.getByRole('button', { name: 'Start again from the shipped sheet' }).click()
    await back.waitForFunction(() => document.querySelector<HTMLInputElement>('input[aria-label="Taps hung"]')?.value === '140')
  })

  it('says in the list which sheet has changes', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await hangTaps(page, '90')
    await page.getByRole('link', { name: 'All sheets' }).click()
    expect(await page.locator('.sheets li', { hasText: 'With your changes' }).locator('a').innerText()).toBe(pallets)
  })

  it('goes back and forward between sheets', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await page.goBack()
    await page.getByRole('heading', { name: 'Sheets to start from' }).waitFor()
    await page.goForward()
    await page.getByRole('heading', { level: 1, name: pallets }).waitFor()
  })

  it('saves the edited sheet with nothing changed but the edit, and opens it again', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'thawbook-'))
    try {
      const { page } = await visit()
      await openSheet(page, pallets)
      const figure = await hangTaps(page, '90')
      const download = page.waitForEvent('download')
      await page.getByRole('button', { name: 'Save this sheet' }).click()
      const file = join(folder, 'my-ridge.yaml')
      await (await download).saveAs(file)
      const saved = (await readFile(file, 'utf8')).split('\n')
      const shipped = (await (await fetch(new URL('scenarios/heron-ridge-pallets.yaml', url()))).text()).split('\n')
      expect(saved).toHaveLength(shipped.length)
      const changed = saved.filter((line, i) => line !== shipped[i])
      expect(changed).toHaveLength(1)
      expect(changed[0]).toContain('id: taps, label: Taps hung, is: 90, unit: tap')

      const other = await visit()
      await other.page.getByLabel('A sheet file').setInputFiles(file)
      await headlines(other.page).first().waitFor()
      expect(await figureOf(other.page, 'syrup')).toBe(figure)
      expect(other.page.url()).toContain('my-ridge.yaml')
    } finally {
      await rm(folder, { recursive: true })
    }
  })

  it('says where a file that is not a sheet goes wrong, and leaves the open one alone', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'thawbook-'))
    try {
      const file = join(folder, 'broken.yaml')
      await writeFile(file, 'thawbook: 1\ntitle: [\n')
      const { page } = await visit()
      await openSheet(page, pallets)
      await page.getByLabel('A sheet file').setInputFiles(file)
      const notice = page.locator('.notice.trouble')
      await notice.waitFor()
      expect(await notice.innerText()).toMatch(/“broken\.yaml” could not be read as a sheet/)
      expect(await notice.locator('.where').first().innerText()).toMatch(/broken\.yaml, line \d+/)
      expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(pallets)
    } finally {
      await rm(folder, { recursive: true })
    }
  })

  it('starts a reckoner that died again, with the sheet as it was', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    await hangTaps(page, '90')
    const worker = page.workers()[0]
    if (worker === undefined) throw new Error('the page has no worker')
    // What the browser does to a module that ran out of stack.
    await worker.evaluate(() => {
      const door = (globalThis as unknown as { thawbook: { call(): never } }).thawbook
      door.call = () => {
        throw new RangeError('Maximum call stack size exceeded')
      }
    })
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('91')
    await page.locator('.notice.news').waitFor()
    expect(await page.locator('.notice.news').innerText()).toContain('was started again')
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).press('Enter')
    expect(await tapsField(page)).toBe('90')
    await hangTaps(page, '120')
    expect(await rowOf(page, 'taps').locator('.comes-to').innerText()).toBe('120 taps')
  })
})
