import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const path = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

/** One kind of thing that axe found wrong, and where. */
export interface Found {
  id: string
  targets: string[]
}

/** What axe finds wrong with the page as it stands. */
export async function axe(page: Page): Promise<Found[]> {
  // Evaluated rather than added as a script: the content policy admits none from a test.
  await page.evaluate(await readFile(path, 'utf8'))
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: { run(): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }> } }
    const { violations } = await axe.run()
    return violations.map((v) => ({ id: v.id, targets: v.nodes.map((n) => n.target.join(' ')) }))
  })
}

/** How far the page reaches beyond its window sideways, in pixels. */
export function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
}
