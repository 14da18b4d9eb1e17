import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { haveBrowser } from './browser.ts'
import { changedFrom, figureOf, headlines, openSheet, rowOf, visits } from './visit.ts'

const pallets = 'Heron Ridge, old pallets'

const text = (title: string): string => `thawbook: 1\ntitle: ${title}\nchapters:\n  - title: Sap\n    lines: [{id: taps, label: Taps hung, is: 12, unit: tap}]\n`

async function openText(page: Page, name: string, title: string): Promise<void> {
  await page.getByLabel('A sheet file').setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text(title)) })
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
}

const own = (page: Page): Promise<string[]> => page.locator('section[aria-labelledby=own-sheets] .sheets li > a').allInnerTexts()

const tapsField = (page: Page) => page.getByRole('textbox', { name: 'Taps hung', exact: true })

/** Puts a value into the store that sheets are kept in, as another version of the page might. */
function keepRaw(page: Page, name: string, value: unknown): Promise<void> {
  return page.evaluate(
    ([name, value]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('thawbook', 1)
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const change = opening.result.transaction('sheets', 'readwrite')
          change.objectStore('sheets').put(value, name)
          change.oncomplete = () => resolve()
        }
      }),
    [name, value] as const,
  )
}

function rawKept(page: Page, name: string): Promise<unknown> {
  return page.evaluate(
    (name) =>
      new Promise((resolve) => {
        const opening = indexedDB.open('thawbook', 1)
        opening.onsuccess = () => {
          const got = opening.result.transaction('sheets').objectStore('sheets').get(name)
          got.onsuccess = () => resolve(got.result)
        }
      }),
    name,
  )
}

describe.skipIf(!haveBrowser())('the shelf', () => {
  const { visit, url } = visits()

  it('renames, copies, takes away and puts back', async () => {
    const { page } = await visit()
    await openText(page, 'creek.yaml', 'Creek side')
    await page.getByRole('link', { name: 'All sheets' }).click()
    await page.getByRole('button', { name: 'Rename Creek side' }).click()
    // The old title stands selected, to be typed over.
    await page.keyboard.type('Creek side, 2027')
    await page.keyboard.press('Enter')
    await page.getByRole('link', { name: 'Creek side, 2027', exact: true }).waitFor()

    await page.getByRole('button', { name: 'Copy Creek side, 2027' }).click()
    await page.getByRole('link', { name: 'Creek side, 2027, a copy' }).waitFor()
    expect((await own(page)).sort()).toEqual(['Creek side, 2027', 'Creek side, 2027, a copy'])

    await page.getByRole('button', { name: 'Take off the shelf: Creek side, 2027', exact: true }).click()
    await page.getByText('was taken off the shelf').waitFor()
    expect(await own(page)).toEqual(['Creek side, 2027, a copy'])
    await page.getByRole('button', { name: 'Put it back' }).click()
    await page.getByRole('link', { name: 'Creek side, 2027', exact: true }).click()
    await page.getByRole('heading', { level: 1, name: 'Creek side, 2027' }).waitFor()
    expect(await tapsField(page).inputValue()).toBe('12')
  })

  it('copies a shipped scenario with what it is taken from', async () => {
    const { page } = await visit()
    await page.getByRole('button', { name: 'Copy Heron Ridge, propane' }).click()
    const copy = page.locator('section[aria-labelledby=own-sheets] a')
    await copy.click()
    await page.getByRole('heading', { level: 1 }).filter({ hasText: 'a copy' }).waitFor()
    await headlines(page).first().waitFor()
    expect(await page.locator('.diagnosis.error').count()).toBe(0)
  })

  it('leaves alone what a later page kept, and what is damaged, and gives the text out', async () => {
    const { page } = await visit()
    await openText(page, 'creek.yaml', 'Creek side')
    const later = { form: 2, name: 'later.yaml', files: { 'later.yaml': text('Later') }, chapters: ['unknown here'] }
    await keepRaw(page, 'later.yaml', later)
    await keepRaw(page, 'torn.yaml', { title: 'Torn' })
    await page.goto(`${url()}#sheets`)
    await page.reload()
    const section = page.getByRole('region', { name: 'Kept, but not readable here' })
    await section.locator('li').nth(1).waitFor()
    expect(await section.locator('li').allInnerTexts()).toEqual([expect.stringContaining('A later Thawbook kept this'), expect.stringContaining('is damaged')])
    const download = page.waitForEvent('download')
    await section.getByRole('button', { name: 'Save its text to a file: later.yaml' }).click()
    expect((await download).suggestedFilename()).toBe('later.yaml')

    // A file of that name does not take its place.
    await openText(page, 'later.yaml', 'Mine')
    expect(page.url()).toContain('later-2.yaml')
    expect(await rawKept(page, 'later.yaml')).toEqual(later)
    await page.goto(`${url()}#sheet/later.yaml`)
    await page.getByText('is kept here in a way this page cannot read').waitFor()
  })

  it('keeps a sheet of a later form that was opened before, says why it does not open, and can save it', async () => {
    const { page } = await visit()
    await openText(page, 'creek.yaml', 'Creek side')
    const kept = (await rawKept(page, 'creek.yaml')) as { files: Record<string, string> }
    const newer = { ...kept, files: { ...kept.files, 'creek.yaml': text('Creek side').replace('thawbook: 1', 'thawbook: 2') } }
    await keepRaw(page, 'creek.yaml', newer)
    await page.reload()
    await page.locator('.notice.trouble').waitFor()
    expect(await page.locator('.notice.trouble').innerText()).toMatch(/creek\.yaml, line 1/)
    expect(await rawKept(page, 'creek.yaml')).toEqual(newer)
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save its text to a file' }).click()
    expect((await download).suggestedFilename()).toBe('creek.yaml')
  })

  it('has what was typed though the page ended while the reckoner was at work', async () => {
    const { page } = await visit()
    await openSheet(page, pallets)
    const before = await figureOf(page, 'syrup')
    const worker = page.workers()[0]
    if (worker === undefined) throw new Error('the page has no worker')
    // Busy for as long as the page lives.
    void worker.evaluate(() => {
      for (;;);
    }).catch(() => undefined)
    await tapsField(page).fill('90')
    await page.waitForFunction(() => sessionStorage.getItem('thawbook.typed')?.includes('90'))
    await page.reload()
    await headlines(page).first().waitFor()
    await changedFrom(() => figureOf(page, 'syrup'), before)
    expect(await tapsField(page).inputValue()).toBe('90')
    expect(await page.evaluate(() => sessionStorage.getItem('thawbook.typed'))).toBeNull()
  })
})

describe.skipIf(!haveBrowser())('two windows on one sheet', () => {
  const { visit, url } = visits()
  const address = (): string => `${url()}#sheet/heron-ridge-pallets.yaml`

  async function two(): Promise<[Page, Page]> {
    const { page } = await visit({ at: '#sheet/heron-ridge-pallets.yaml' })
    await headlines(page).first().waitFor()
    const other = await page.context().newPage()
    await other.goto(address())
    await headlines(other).first().waitFor()
    return [page, other]
  }

  async function hang(page: Page, taps: string): Promise<void> {
    await tapsField(page).fill(taps)
    await rowOf(page, 'taps').locator('.comes-to', { hasText: `${taps} taps` }).waitFor()
  }

  it('notice each other, and either may show what the other did', async () => {
    const [one, other] = await two()
    await hang(one, '90')
    await other.getByText('Another window has changed this sheet').waitFor()
    await other.getByRole('button', { name: 'Show what it did' }).click()
    await rowOf(other, 'taps').locator('.comes-to', { hasText: '90 taps' }).waitFor()
    await hang(other, '91')
    expect(other.url()).toBe(address())
    await one.getByText('Another window has changed this sheet').waitFor()
  })

  it('lose nothing when both go on changing it', async () => {
    const [one, other] = await two()
    await hang(one, '90')
    await other.getByText('Another window has changed this sheet').waitFor()
    await hang(other, '55')
    await other.getByText('What you have here is kept as “heron-ridge-pallets-2.yaml”').waitFor()
    await other.waitForURL(/heron-ridge-pallets-2/)
    await hang(other, '56')
    await hang(one, '93')
    for (const [page, taps] of [[one, '93'], [other, '56']] as const) {
      await page.reload()
      await headlines(page).first().waitFor()
      expect(await tapsField(page).inputValue()).toBe(taps)
    }
  })
})
