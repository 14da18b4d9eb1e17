// Opens a sheet in the built reckoner and prints what it says of it, as JSON:
// {"view": …, "reckoning": …}, each in turn as the text that the door answered.
//
//   node reckon-ahead.mjs FOLDER_OF_THE_RECKONER SHEET.yaml
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, join, resolve } from 'node:path'

const [folder, sheet] = process.argv.slice(2)
// The loader is a script of the old kind, for which this is not a module.
createRequire(import.meta.url)(resolve(folder, 'wasm_exec.js'))
const go = new globalThis.Go()
const { instance } = await WebAssembly.instantiate(readFileSync(join(folder, 'reckoner.wasm')), go.importObject)
await new Promise((ready) => {
  globalThis.thawbookReady = ready
  void go.run(instance)
})
const name = basename(sheet)
const ask = (method, payload) => globalThis.thawbook.call(method, JSON.stringify(payload)).json
const view = ask('open', { name, files: { [name]: readFileSync(sheet, 'utf8') } })
const reckoning = ask('reckon', { system: 'as-written' })
for (const said of [view, reckoning].map((json) => JSON.parse(json))) if (said.error || said.kept) throw new Error(`${name} does not reckon: ${JSON.stringify(said.error ?? said.diagnostics)}`)
process.stdout.write(JSON.stringify({ view, reckoning }), () => process.exit(0))
