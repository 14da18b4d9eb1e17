import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { extname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { policy } from '../build/content-policy.ts'

/** Where the built page lies. */
export const folder = fileURLToPath(new URL('../../.build/page/', import.meta.url))

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.wasm': 'application/wasm',
}

/** A plain host of the built page, as a path below its root so that a URL that is not relative shows. */
export interface Host {
  url: string
  stop(): Promise<void>
}

/** The page under test: at THAWBOOK_URL when that is set, or else the built folder on a plain host of this test's own. */
export async function host(): Promise<Host> {
  const given = process.env['THAWBOOK_URL']
  if (given !== undefined && given !== '') return { url: given, stop: () => Promise.resolve() }
  await readFile(`${folder}index.html`).catch(() => {
    throw new Error('the page is not built: run "npm run build" first')
  })
  const server = createServer((request, response) => {
    const path = decodeURIComponent((request.url ?? '').split('?')[0] ?? '')
    const name = path.startsWith('/under/a/path/') ? path.slice('/under/a/path/'.length) || 'index.html' : ''
    readFile(folder + name).then(
      (body) => {
        response.writeHead(200, { 'Content-Type': types[extname(name)] ?? 'text/plain; charset=utf-8', 'Content-Security-Policy': policy })
        response.end(body)
      },
      () => {
        response.writeHead(404)
        response.end('nothing of that name')
      },
    )
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return { url: `http://127.0.0.1:${portOf(server)}/under/a/path/`, stop: () => new Promise((resolve) => server.close(() => resolve())) }
}

function portOf(server: Server): number {
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('the host has no port')
  return address.port
}
