import { existsSync } from 'node:fs'
import { type Browser, chromium } from 'playwright-core'

const places = [process.env['CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** Where a browser is, or undefined. */
export const browserPath = places.find((path) => path !== undefined && path !== '' && existsSync(path))

/**
 * Whether the tests can run. Without a browser they are skipped on a person's
 * machine, saying so; where CI is set they must not pass unseen.
 */
export function haveBrowser(): boolean {
  if (browserPath !== undefined) return true
  if (process.env['CI'] === 'true') throw new Error('no browser: install chromium, or name one in CHROMIUM')
  console.warn('no browser found, so the page is not tested in one: install chromium, or name one in CHROMIUM')
  return false
}

export function launch(): Promise<Browser> {
  return chromium.launch({
    ...(browserPath === undefined ? {} : { executablePath: browserPath }),
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })
}
