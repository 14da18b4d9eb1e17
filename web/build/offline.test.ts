import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { buildOf, digestOf, tagOf } from './offline.ts'

const dir = mkdtempSync(join(tmpdir(), 'thawbook-'))
afterAll(() => rmSync(dir, { recursive: true }))

const put = (name: string, text: string): void => writeFileSync(join(dir, name), text)

describe('buildOf', () => {
  it('lists every file but the service worker, and changes its id with any of them', () => {
    mkdirSync(join(dir, 'scenarios'))
    put('index.html', 'page')
    put('scenarios/a.yaml', 'sheet')
    put('reckoner.wasm', 'program')
    put('reckoner.wasm.gz', 'packed')
    put('sw.js', 'worker')
    const before = buildOf(dir)
    expect(before.files.map((f) => f.name)).toEqual(['index.html', 'reckoner.wasm', 'reckoner.wasm.gz', 'scenarios/a.yaml'])
    // The packed program is asked for by what it unpacks to.
    expect(before.files.map((f) => f.tag)).toEqual(['page', 'program', 'program', 'sheet'].map((text) => tagOf(digestOf(text))))
    expect(before.files[2]?.digest).toBe(digestOf('packed'))

    put('sw.js', 'another worker')
    expect(buildOf(dir)).toEqual(before)
    put('scenarios/a.yaml', 'sheet, changed')
    expect(buildOf(dir).id).not.toBe(before.id)
  })
})
