// The compressed size of the script and styles that the first view waits for:
// what index.html names, what those import at once, and the reckoner's worker.
// What is fetched later (charts, formula editor, printing) is told apart.
//
//   node bench/weight.mjs
import { gzipSync } from 'node:zlib'
import { filesIn, page } from './host.mjs'
import { firstPaint } from './first-paint.mjs'

const files = await filesIn(page)
const first = firstPaint(files)
const weigh = (names) => names.reduce((sum, name) => sum + gzipSync(files.get(name)).length, 0)
const all = [...files.keys()].filter((name) => /\.(js|css)$/.test(name))
const weight = weigh(first)
console.log(JSON.stringify({
  first_paint_bytes: weight,
  wanted_at_most: 200_000,
  ratio: Number((weight / 200_000).toFixed(3)),
  first_paint_files: first,
  later_bytes: weigh(all.filter((name) => !first.includes(name))),
  reckoner_bytes: { plain: files.get('reckoner.wasm').length, packed: files.get('reckoner.wasm.gz').length },
}, null, 1))
