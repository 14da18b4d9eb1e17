import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { axe, overflow } from './axe.ts'
import { haveBrowser } from './browser.ts'
import { headlines, visits } from './visit.ts'

const two = 'thawbook: 1\ntitle: Creek side\nchapters:\n  - title: Sap\n    lines: [{id: taps, label: Taps hung, is: 12, unit: tap}]\n'

/** Each view of beginning and keeping, and how a person gets to see it. */
const views: Record<string, (page: Page, url: string) => Promise<void>> = {
  async 'first visit'(page, url) {
    await page.evaluate(() => localStorage.clear())
    await page.goto(`${url}#sheet/heron-ridge-pallets.yaml`)
    await page.getByRole('heading', { name: 'What you are looking at' }).waitFor()
    await headlines(page).first().waitFor()
  },
  async questions(page, url) {
    await page.goto(`${url}#new`)
    await page.getByLabel('Taps', { exact: true }).fill('many')
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    await page.locator('.senseless').waitFor()
  },
  async shelf(page) {
    for (const name of ['creek.yaml', 'pond.yaml']) {
      await page.getByLabel('A sheet file').setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(two) })
      await page.waitForURL(new RegExp(name))
      await page.getByRole('heading', { level: 1, name: 'Creek side' }).waitFor()
    }
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('thawbook', 1)
          opening.onsuccess = () => {
            const change = opening.result.transaction('sheets', 'readwrite')
            change.objectStore('sheets').put({ form: 9, files: { 'later.yaml': 'thawbook: 9\n' } }, 'later.yaml')
            change.oncomplete = () => resolve()
          }
        }),
    )
    await page.reload()
    await page.getByRole('link', { name: 'All sheets' }).click()
    await page.getByRole('heading', { name: 'Kept, but not readable here' }).waitFor()
    await page.getByRole('button', { name: 'Take off the shelf: Creek side' }).first().click()
    await page.getByText('was taken off the shelf').waitFor()
    await page.getByRole('button', { name: 'Rename Creek side' }).click()
  },
  async 'another window'(page, url) {
    await page.goto(`${url}#sheet/heron-ridge-pallets.yaml`)
    await headlines(page).first().waitFor()
    const other = await page.context().newPage()
    await other.goto(`${url}#sheet/heron-ridge-pallets.yaml`)
    await headlines(other).first().waitFor()
    await other.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('77')
    await page.bringToFront()
    await page.getByText('Another window has changed this sheet').waitFor()
  },
}

async function shoot(page: Page, name: string): Promise<void> {
  const kept = process.env['THAWBOOK_SHOTS']
  if (kept !== undefined) await page.screenshot({ path: `${kept}/${name.replaceAll(' ', '-')}.png` })
}

describe.skipIf(!haveBrowser())('the views of beginning and keeping', () => {
  const { visit, url } = visits()

  for (const [name, show] of Object.entries(views)) {
    for (const colorScheme of ['light', 'dark'] as const) {
      it(`${name}: passes axe in ${colorScheme}, wide and narrow, and never scrolls sideways`, async () => {
        const { page, troubles } = await visit({ colorScheme })
        await show(page, url())
        for (const width of [1280, 320]) {
          await page.setViewportSize({ width, height: 900 })
          await shoot(page, `${name} ${colorScheme} ${width}`)
          expect(await overflow(page)).toBe(0)
          expect(await axe(page)).toEqual([])
        }
        expect(troubles).toEqual([])
      })
    }

    it(`${name}: is whole at 200 % zoom, and with text twice as large`, async () => {
      const { page } = await visit({ viewport: { width: 640, height: 450 }, deviceScaleFactor: 2 })
      await show(page, url())
      expect(await overflow(page)).toBe(0)
      await page.setViewportSize({ width: 1280, height: 900 })
      await page.evaluate(() => {
        const larger = new CSSStyleSheet()
        larger.replaceSync('html { font-size: 200% }')
        document.adoptedStyleSheets = [larger]
      })
      await shoot(page, `${name} large text`)
      expect(await overflow(page)).toBe(0)
    })
  }

  it('stands still for whoever asked for less motion', async () => {
    const { page } = await visit({ reducedMotion: 'reduce' })
    for (const [, show] of Object.entries(views).filter(([name]) => name !== 'another window')) {
      await show(page, url())
      const moving = await page.evaluate(() =>
        [...document.querySelectorAll('*')]
          .map((element) => ({ element, style: getComputedStyle(element) }))
          .filter(({ style }) => style.animationName !== 'none' || style.transitionDuration.split(', ').some((time) => parseFloat(time) > 0.01) || style.scrollBehavior === 'smooth')
          .map(({ element }) => element.tagName + '.' + element.className),
      )
      expect(moving).toEqual([])
    }
  })
})
