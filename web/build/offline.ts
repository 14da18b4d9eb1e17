import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Plugin } from 'vite'
import type { Build, Listed } from '../src/offline/plan.ts'

const worker = 'sw.js'

/**
 * Packs the programs, and writes into the service worker the list of all that
 * the build consists of, each file with its digest. It is done over the folder
 * as written, so that nothing which ends up in it can be left out.
 */
export function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: 'src/offline/sw.ts', fileName: worker })
    },
    writeBundle: {
      order: 'post',
      handler({ dir }) {
        if (dir === undefined) this.error('the page is not written to a folder')
        for (const name of filesIn(dir)) if (name.endsWith('.wasm')) packBeside(join(dir, name))
        const text = readFileSync(join(dir, worker), 'utf8')
        if (!text.includes('__BUILT__')) this.error(`${worker} has no place for the list of files`)
        if (/^\s*import\b/m.test(text)) this.error(`${worker} is not of one piece`)
        writeFileSync(join(dir, worker), text.replaceAll('__BUILT__', JSON.stringify(buildOf(dir))))
      },
    },
  }
}

/** What the built page in a folder consists of, but for the service worker itself. */
export function buildOf(dir: string): Build {
  const names = filesIn(dir).filter((name) => name !== worker)
  const digests = new Map(names.map((name) => [name, digestOf(readFileSync(join(dir, name)))]))
  const files = names.map((name): Listed => {
    const digest = digests.get(name) ?? ''
    return { name, digest, tag: tagOf(digests.get(name.replace(/\.gz$/, '')) ?? digest) }
  })
  return { id: tagOf(digestOf(JSON.stringify(files))), files }
}

/** What a file is asked for with behind `?v=`. */
export function tagOf(digest: string): string {
  return digest.slice(0, 12)
}

export function digestOf(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex')
}

function packBeside(path: string): void {
  writeFileSync(`${path}.gz`, gzipSync(readFileSync(path), { level: 9 }))
}

function filesIn(dir: string): string[] {
  return readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(dir, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort()
}
