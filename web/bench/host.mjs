import { readdir, readFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import { extname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Where the built page lies. */
export const page = fileURLToPath(new URL('../../.build/page/', import.meta.url))

const types = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.wasm': 'application/wasm', '.svg': 'image/svg+xml', '.json': 'application/json' }

/** Every file under a folder, by name. */
export async function filesIn(folder) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  const names = entries.filter((e) => e.isFile()).map((e) => relative(folder, join(e.parentPath, e.name)))
  return new Map(await Promise.all(names.map(async (name) => [name, await readFile(join(folder, name))])))
}

/** A plain host of some files, on this machine. */
export async function host(files) {
  const server = createServer((request, response) => {
    const name = decodeURIComponent(request.url.split('?')[0]).slice(1) || 'index.html'
    const body = files.get(name)
    response.writeHead(body === undefined ? 404 : 200, { 'Content-Type': types[extname(name)] ?? 'text/plain' })
    response.end(body)
  })
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve))
  return {
    url: `http://127.0.0.1:${server.address().port}/`,
    stop() {
      server.close()
      server.closeAllConnections()
    },
  }
}

/** The value that a share of the numbers lies below. */
export function quantile(numbers, share) {
  const sorted = [...numbers].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]
}
