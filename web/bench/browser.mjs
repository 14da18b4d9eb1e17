import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'

const executablePath = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) => path && existsSync(path))

/** A browser that has kept nothing. */
export function launch() {
  return chromium.launch({ ...(executablePath ? { executablePath } : {}), args: ['--headless', '--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking', '--disable-sync'] })
}
