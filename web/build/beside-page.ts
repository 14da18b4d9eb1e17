import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { digestOf, tagOf } from './offline.ts'
import { shelfOf } from './shelf.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const wasmDir = `${root}.build/wasm/`
const sheetDir = `${root}scenarios/`

/**
 * Lays beside the page what it fetches at run time: the reckoner, the Go
 * toolchain's loader for it, the shipped sheets and their list. The first two
 * keep plain names and are asked for with their hash, so that a host that
 * caches hard still gives the pair that belongs together.
 */
export function besidePage(): Plugin {
  return {
    name: 'beside-page',
    config: () => ({ define: { __PARTS__: JSON.stringify(partsNow()) } }),
    buildStart() {
      if (this.meta.watchMode) return
      for (const name of ['reckoner.wasm', 'wasm_exec.js']) {
        if (!existsSync(wasmDir + name)) this.error(`.build/wasm/${name} is missing: build the reckoner first`)
      }
    },
    generateBundle() {
      for (const [fileName, source] of files()) this.emitFile({ type: 'asset', fileName, source })
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const name = decodeURIComponent((request.url ?? '').split('?')[0] ?? '').slice(1)
        const source = new Map(files()).get(name)
        if (source === undefined) return next()
        response.setHeader('Content-Type', name.endsWith('.wasm') ? 'application/wasm' : name.endsWith('.js') ? 'text/javascript' : 'text/plain')
        response.end(source)
      })
    },
  }
}

function partsNow(): { reckoner: string; packed: string; loader: string } {
  const tag = (name: string): string => (existsSync(wasmDir + name) ? `?v=${tagOf(digestOf(readFileSync(wasmDir + name)))}` : '')
  const reckoner = tag('reckoner.wasm')
  return { reckoner: `reckoner.wasm${reckoner}`, packed: `reckoner.wasm.gz${reckoner}`, loader: `wasm_exec.js${tag('wasm_exec.js')}` }
}

function files(): [string, Uint8Array | string][] {
  const sheets = existsSync(sheetDir) ? readdirSync(sheetDir).filter((name) => name.endsWith('.yaml')).sort() : []
  const texts = sheets.map((file): [string, string] => [file, readFileSync(sheetDir + file, 'utf8')])
  const parts = ['reckoner.wasm', 'wasm_exec.js']
    .filter((name) => existsSync(wasmDir + name))
    .map((name): [string, Uint8Array] => [name, readFileSync(wasmDir + name)])
  return [
    ...parts,
    ...texts.map(([file, text]): [string, string] => [`scenarios/${file}`, text]),
    ['scenarios/index.json', JSON.stringify(shelfOf(texts), null, 1)],
  ]
}
