import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { madeFrom } from '../src/state/questions.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const script = fileURLToPath(new URL('reckon-ahead.mjs', import.meta.url))

/** The name of the file that holds what was reckoned ahead. */
export const aheadFile = 'ahead.json'

/**
 * Reckons the finished example when the page is built, with the reckoner that
 * is shipped beside it, so that a first visit sees a season while its own
 * reckoner is still on the way.
 */
export function ahead(): Plugin {
  return {
    name: 'ahead',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: aheadFile, source: reckonAhead(`${root}.build/wasm`, `${root}scenarios/${madeFrom}`) })
    },
  }
}

/** What the reckoner in a folder says of a sheet. */
export function reckonAhead(folder: string, sheet: string): string {
  return execFileSync(process.execPath, [script, folder, sheet], { encoding: 'utf8', maxBuffer: 64 << 20 })
}
