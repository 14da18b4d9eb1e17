import { gzipSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { firstPaint } from '../bench/first-paint.mjs'
import { builtFiles } from './server.ts'

const most = 200_000

it('keeps the scripts and styles that the first view waits for under 200 kB compressed', async () => {
  const files = await builtFiles()
  const names = firstPaint(files)
  const later = [...files.keys()].filter((name) => /\.js$/.test(name) && !names.includes(name))
  expect(names.some((name) => /worker/.test(name))).toBe(true)
  // What is fetched when first needed must be there, and not among them.
  expect(later.length).toBeGreaterThan(2)
  expect(names.reduce((sum, name) => sum + gzipSync(files.get(name) ?? '').length, 0)).toBeLessThan(most)
})
