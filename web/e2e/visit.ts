import { afterAll, afterEach, beforeAll } from 'vitest'
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core'
import { launch } from './browser.ts'
import { host, type Host } from './server.ts'

/** What a visit saw besides the page itself. */
export interface Visit {
  page: Page
  /** Every request's URL, from the page and its worker. */
  requests: string[]
  /** Errors on the page and complaints in its console. */
  troubles: string[]
}

const waiting = 30_000

/** Sets up one browser and one host for a file of tests; gives a way to begin fresh visits. */
export function visits(): { visit(options?: BrowserContextOptions & { at?: string }): Promise<Visit>; url(): string } {
  let browser: Browser
  let site: Host
  beforeAll(async () => {
    site = await host()
    browser = await launch()
  })
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close()
  })
  afterAll(async () => {
    await browser?.close()
    await site?.stop()
  })
  return {
    url: () => site.url,
    // On the list of sheets unless told otherwise: the bare address is the first visit's.
    async visit({ at = '#sheets', ...options } = {}) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options })
      context.setDefaultTimeout(waiting)
      const page = await context.newPage()
      const requests: string[] = []
      const troubles: string[] = []
      context.on('request', (request) => requests.push(request.url()))
      page.on('pageerror', (error) => troubles.push(String(error)))
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text())
      })
      await page.goto(site.url + at)
      return { page, requests, troubles }
    },
  }
}

/** Opens a shipped sheet from the list and waits for its ranges. */
export async function openSheet(page: Page, title: string): Promise<void> {
  await page.getByRole('link', { name: title, exact: true }).click()
  await page.getByRole('heading', { level: 1, name: title }).waitFor()
  await headlines(page).first().waitFor()
}

/** The season panel's entries. */
export function headlines(page: Page): Locator {
  return page.locator('.headline')
}

/** A headline's figure as shown. */
export async function figureOf(page: Page, line: string): Promise<string> {
  return page.locator(`.headline[data-line="${line}"] .figure`).innerText()
}

/** A line's row in the chapters. */
export function rowOf(page: Page, line: string): Locator {
  return page.locator(`tr[data-line="${line}"]`)
}

/** Waits until a figure is no longer what it was, and gives the new one. */
export async function changedFrom(read: () => Promise<string>, before: string): Promise<string> {
  const end = Date.now() + waiting
  while (Date.now() < end) {
    const now = await read()
    if (now !== before) return now
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  throw new Error(`still ${before}`)
}
