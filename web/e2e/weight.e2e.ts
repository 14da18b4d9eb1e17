import { readFile, readdir } from 'node:fs/promises'
import { gzipSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { folder } from './server.ts'

const most = 200_000

it('keeps scripts and styles under 200 kB compressed', async () => {
  const names = (await readdir(folder, { recursive: true })).filter((name) => /\.(js|css)$/.test(name))
  expect(names.length).toBeGreaterThan(2)
  const weights = await Promise.all(names.map(async (name) => gzipSync(await readFile(folder + name)).length))
  expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeLessThan(most)
})
