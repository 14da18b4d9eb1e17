import { readdir, readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { policy } from '../build/content-policy.ts'

/** Where the built page lies. */
export const folder = fileURLToPath(new URL('../../.build/page/', import.meta.url))

/** Not the root, so that a URL that is not relative shows. */
const under = '/under/a/path/'

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.wasm': 'application/wasm',
}

/** A plain host of the built page. */
export interface Host {
  url: string
  /** What it gives, by name; tests may change it while it runs. Empty for a host given from outside. */
  files: Map<string, Buffer>
  stop(): Promise<void>
}

/** The page under test: at THAWBOOK_URL when that is set, or else the built folder on a plain host of this test's own. */
export async function host(): Promise<Host> {
  const given = process.env['THAWBOOK_URL']
  if (given !== undefined && given !== '') return { url: given, files: new Map(), stop: () => Promise.resolve() }
  const files = await builtFiles()
  const server = createServer((request, response) => {
    const path = decodeURIComponent((request.url ?? '').split('?')[0] ?? '')
    const name = path.startsWith(under) ? path.slice(under.length) || 'index.html' : ''
    const body = files.get(name)
    if (body === undefined) {
      response.writeHead(404)
      response.end('nothing of that name')
      return
    }
    response.writeHead(200, { 'Content-Type': types[extname(name)] ?? 'text/plain; charset=utf-8', 'Content-Security-Policy': policy })
    response.end(body)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      server.close(() => resolve())
      server.closeAllConnections()
    })
  return { url: `http://127.0.0.1:${portOf(server)}${under}`, files, stop }
}

/** The built page as it is now: a build in the midst of the tests must not change what they see. */
export async function builtFiles(): Promise<Map<string, Buffer>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => [])
  const names = entries.filter((e) => e.isFile()).map((e) => relative(folder, join(e.parentPath, e.name)))
  if (!names.includes('index.html')) throw new Error('the page is not built: run "npm run build" first')
  return new Map(await Promise.all(names.map(async (name): Promise<[string, Buffer]> => [name, await readFile(folder + name)])))
}

function portOf(server: Server): number {
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('the host has no port')
  return address.port
}
