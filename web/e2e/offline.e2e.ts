import { createHash } from 'node:crypto'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Browser, chromium } from 'playwright-core'
import { browserPath, haveBrowser, launch } from './browser.ts'
import { host, type Host } from './server.ts'
import { changedFrom, figureOf, headlines, rowOf } from './visit.ts'

const digestOf = (content: Buffer | string): string => createHash('sha256').update(content).digest('hex')

/** Puts another build on the host: one sheet is called otherwise. */
function publish({ files }: Host, text: string): void {
  const name = 'scenarios/index.json'
  const worker = files.get('sw.js')?.toString() ?? ''
  const old = files.get(name) ?? Buffer.from('')
  const now = Buffer.from(old.toString().replace(/Heron Ridge, old pallets[^"]*/, text))
  const id = /"?id"?:"?([0-9a-f]{12})/.exec(worker)?.[1] ?? /id:`([0-9a-f]{12})/.exec(worker)?.[1] ?? ''
  if (id === '') throw new Error('the service worker names no build')
  files.set(name, now)
  files.set('sw.js', Buffer.from(worker.replaceAll(digestOf(old), digestOf(now)).replaceAll(digestOf(old).slice(0, 12), digestOf(now).slice(0, 12)).replaceAll(id, digestOf(text).slice(0, 12))))
}

/** Waits until the page is kept in the browser as a whole. */
async function keptOffline(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated')
}

describe.skipIf(!haveBrowser() || process.env['THAWBOOK_URL'])('the page without its host', () => {
  let browser: Browser
  let site: Host
  let page: Page
  beforeEach(async () => {
    site = await host()
    browser = await launch()
    page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage()
    await page.goto(site.url)
    await headlines(page).first().waitFor()
    await keptOffline(page)
  })
  afterEach(async () => {
    await browser.close()
    await site.stop()
  })

  it('opens, reckons, makes a new sheet and keeps it', async () => {
    await site.stop()
    await page.reload()
    await headlines(page).first().waitFor()
    const before = await figureOf(page, 'syrup')
    await page.getByRole('textbox', { name: 'Taps hung', exact: true }).fill('90')
    await changedFrom(() => figureOf(page, 'syrup'), before)
    await page.getByRole('link', { name: 'New sheet' }).click()
    await page.getByLabel('Taps', { exact: true }).fill('33')
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    await page.getByRole('heading', { level: 1, name: 'Our own season' }).waitFor()
    await rowOf(page, 'taps').locator('.comes-to', { hasText: '33 taps' }).waitFor()
    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'Our own season' }).waitFor()
  })

  it('takes up a later build as a whole the next time it is loaded', async () => {
    publish(site, 'Heron Ridge, renamed in print')
    await page.reload()
    await page.getByText('A newer Thawbook has come').waitFor()
    await page.goto(`${site.url}#sheets`)
    await page.reload()
    await page.getByRole('link', { name: 'Heron Ridge, renamed in print', exact: true }).waitFor()
    await site.stop()
    await page.reload()
    await page.getByRole('link', { name: 'Heron Ridge, renamed in print', exact: true }).waitFor()
  })

  it('stays with the build it has when the host gives half of another', async () => {
    const name = 'scenarios/index.json'
    const before = site.files.get(name)
    publish(site, 'Heron Ridge, half sent')
    // The worker and its list are there, the file is still the earlier one.
    site.files.set(name, before ?? Buffer.from(''))
    await page.reload()
    await headlines(page).first().waitFor()
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready
      await registration.update().catch(() => undefined)
      for (let i = 0; i < 100 && registration.installing !== null; i++) await new Promise((resolve) => setTimeout(resolve, 50))
    })
    await page.goto(`${site.url}#sheets`)
    await page.reload()
    await page.getByRole('link', { name: 'Heron Ridge, old pallets', exact: true }).waitFor()
    expect(await page.evaluate(async () => (await caches.keys()).length)).toBe(1)
  })
})

describe.skipIf(!haveBrowser() || process.env['THAWBOOK_URL'])('the page from a host elsewhere', () => {
  it('asks for the packed reckoner only', async () => {
    const site = await host()
    const browser = await chromium.launch({
      ...(browserPath === undefined ? {} : { executablePath: browserPath }),
      args: ['--headless', '--no-sandbox', '--disable-gpu', '--host-resolver-rules=MAP sugarhouse.test 127.0.0.1'],
    })
    try {
      const page = await browser.newPage()
      const asked: string[] = []
      page.context().on('request', (request) => asked.push(new URL(request.url()).pathname.split('/').at(-1) ?? ''))
      await page.goto(site.url.replace('127.0.0.1', 'sugarhouse.test'))
      await headlines(page).first().waitFor()
      expect(asked.filter((name) => name.startsWith('reckoner'))).toEqual(['reckoner.wasm.gz'])
    } finally {
      await browser.close()
      await site.stop()
    }
  })
})
