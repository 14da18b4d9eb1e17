import { posix } from 'node:path'

/** The scripts and styles of a built page that its first view waits for, by name. */
export function firstPaint(files) {
  const html = files.get('index.html').toString()
  const named = [...html.matchAll(/(?:src|href)="\.?\/?([^"]+\.(?:js|css))"/g)].map((match) => match[1])
  // The loader is not named there; the worker asks for it at once.
  const found = new Set([...named, 'wasm_exec.js'])
  for (const name of found) {
    if (!name.endsWith('.js') || !files.has(name)) continue
    const text = files.get(name).toString()
    const beside = (path) => posix.normalize(posix.join(posix.dirname(name), path))
    // Imported at once: "import … from", "import '…'", "export … from"; not "import('…')".
    for (const match of text.matchAll(/(?:\bfrom|\bimport)\s*["'`](\.[^"'`]+\.js)["'`]/g)) found.add(beside(match[1]))
    // The worker is started at once too.
    for (const match of text.matchAll(/new URL\(\s*["'`]([^"'`]+\.js)["'`]/g)) found.add(beside(match[1]))
  }
  return [...found].filter((name) => files.has(name)).sort()
}
