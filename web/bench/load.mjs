// From a cold load to the first result, against the least that a page made with
// Go can be: one that says hello. Each visit has a browser of its own, and the
// two take turns, so that whatever else the machine does falls on both.
//
//   node bench/load.mjs [visits of each, 9 unless said]
import { execFileSync } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { launch } from './browser.mjs'
import { filesIn, host, page, quantile } from './host.mjs'

const hello = `package main

import "syscall/js"

func main() {
	d := js.Global().Get("document")
	p := d.Call("createElement", "p")
	p.Set("id", "hello")
	p.Set("textContent", "hello")
	d.Get("body").Call("append", p)
}
`

const shell = `<!doctype html><meta charset="utf-8"><title>hello</title><body><script src="wasm_exec.js"></script><script>
const go = new Go()
WebAssembly.instantiateStreaming(fetch('hello.wasm'), go.importObject).then(({ instance }) => go.run(instance))
</script>`

/** The bare page, built with the same toolchain and flags as the reckoner. */
async function barePage() {
  const dir = await mkdtemp(join(tmpdir(), 'thawbook-hello-'))
  try {
    await writeFile(join(dir, 'main.go'), hello)
    execFileSync('go', ['build', '-trimpath', '-ldflags=-s -w', '-o', join(dir, 'hello.wasm'), join(dir, 'main.go')], { env: { ...process.env, GOOS: 'js', GOARCH: 'wasm' } })
    const root = execFileSync('go', ['env', 'GOROOT'], { encoding: 'utf8' }).trim()
    return new Map([
      ['index.html', Buffer.from(shell)],
      ['hello.wasm', await readFile(join(dir, 'hello.wasm'))],
      ['wasm_exec.js', await readFile(join(root, 'lib/wasm/wasm_exec.js'))],
    ])
  } finally {
    await rm(dir, { recursive: true })
  }
}

/** Milliseconds from the start of the navigation until something is on the page, and until the page set a mark. */
async function visit(url, sign, mark) {
  const browser = await launch()
  try {
    const tab = await browser.newPage()
    await tab.addInitScript((sign) => {
      const seen = new MutationObserver(() => {
        if (document.querySelector(sign) === null) return
        seen.disconnect()
        globalThis.seenAt = performance.now()
      })
      seen.observe(document, { childList: true, subtree: true })
    }, sign)
    await tab.goto(url)
    await tab.waitForFunction(() => globalThis.seenAt !== undefined)
    const seen = await tab.evaluate(() => globalThis.seenAt)
    if (mark === undefined) return { seen }
    await tab.waitForFunction((mark) => performance.getEntriesByName(mark).length > 0, mark)
    return { seen, marked: await tab.evaluate((mark) => performance.getEntriesByName(mark)[0].startTime, mark) }
  } finally {
    await browser.close()
  }
}

const visits = Number(process.argv[2] ?? 9)
const [bare, built] = [await host(await barePage()), await host(await filesIn(page))]
const times = { hello: [], page: [], reckoned: [] }
for (let i = 0; i < visits; i++) {
  times.hello.push((await visit(bare.url, '#hello')).seen)
  const { seen, marked } = await visit(built.url, '.headline .figure', 'reckoned here')
  times.page.push(seen)
  times.reckoned.push(marked)
}
bare.stop()
built.stop()
const middle = { hello: quantile(times.hello, 0.5), page: quantile(times.page, 0.5), reckoned: quantile(times.reckoned, 0.5) }
console.log(JSON.stringify({
  visits,
  hello_ms: Math.round(middle.hello),
  first_result_ms: Math.round(middle.page),
  ratio: Number((middle.page / middle.hello).toFixed(2)),
  wanted_at_most: 3,
  // The first result is the shipped sheet's, reckoned when the page was built;
  // from here on the page's own reckoner has answered.
  reckoned_here_ms: Math.round(middle.reckoned),
  reckoned_here_ratio: Number((middle.reckoned / middle.hello).toFixed(2)),
}))
