import { describe, expect, it } from 'vitest'
import { policy } from '../build/content-policy.ts'
import { haveBrowser } from './browser.ts'
import { builtFiles } from './server.ts'
import { headlines, visits } from './visit.ts'

describe.skipIf(!haveBrowser())('what leaves the page', () => {
  const { visit, url } = visits()

  it('is nothing, whatever is done', async () => {
    const { page, requests, troubles } = await visit({ at: '' })
    await headlines(page).first().waitFor()
    await page.getByRole('link', { name: 'New sheet' }).click()
    await page.getByRole('button', { name: 'Make the sheet' }).click()
    await page.getByRole('heading', { level: 1, name: 'Our own season' }).waitFor()
    await headlines(page).first().waitFor()
    await page.getByRole('radio', { name: 'metric' }).check()
    await page.pdf()
    await page.getByRole('link', { name: 'All sheets' }).click()
    await page.getByRole('button', { name: 'Copy Our own season' }).click()
    await page.getByRole('link', { name: 'Our own season, a copy' }).click()
    await headlines(page).first().waitFor()
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated')
    expect(requests.length).toBeGreaterThan(8)
    expect(requests.filter((request) => !request.startsWith(url()) && !request.startsWith('blob:'))).toEqual([])
    expect(troubles).toEqual([])
  })

  it('is held back by the content policy, in the page itself and where it is served', async () => {
    const { page } = await visit()
    const inPage = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')
    expect(inPage).toBe(policy)
    const served = (await fetch(url())).headers.get('Content-Security-Policy')
    expect(served?.startsWith(policy)).toBe(true)
    const held = await page.evaluate(async () => {
      const told: string[] = []
      document.addEventListener('securitypolicyviolation', (event) => told.push(event.effectiveDirective))
      const inline = document.createElement('script')
      inline.textContent = 'globalThis.ran = true'
      const foreign = document.createElement('script')
      foreign.src = 'http://127.0.0.1:9/elsewhere.js'
      const style = document.createElement('style')
      style.textContent = 'body { color: red }'
      const image = document.createElement('img')
      image.src = 'http://127.0.0.1:9/elsewhere.png'
      document.body.append(inline, foreign, style, image)
      await fetch('http://127.0.0.1:9/').catch(() => undefined)
      await new Promise((resolve) => setTimeout(resolve, 200))
      return { told: [...new Set(told)].sort(), ran: 'ran' in globalThis }
    })
    expect(held.ran).toBe(false)
    expect(held.told).toEqual(['connect-src', 'img-src', 'script-src-elem', 'style-src-elem'])
  })

  it('cannot begin in the built page: it names no other host and holds nothing inline', async () => {
    const html = (await builtFiles()).get('index.html')?.toString() ?? ''
    expect(html).toContain('<script type="module"')
    expect(html).not.toMatch(/https?:\/\//)
    expect(html).not.toMatch(/<style|\sstyle=|\son\w+=|<script(?![^>]*\ssrc=)/)
  })
})
