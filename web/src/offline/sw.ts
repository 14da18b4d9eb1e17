import { type Build, cacheOf, keeps, keyOf, type Listed, nameIn, outlived, tagIn } from './plan.ts'

/** The list of this build's files, put in by the build. */
declare const __BUILT__: Build

/** What a service worker has that a page has not, as far as it is used here. */
interface Scope {
  registration: { scope: string }
  location: Location
  clients: { claim(): Promise<void> }
  skipWaiting(): Promise<void>
  addEventListener(type: 'install' | 'activate', hear: (event: Lasting) => void): void
  addEventListener(type: 'fetch', hear: (event: Fetched) => void): void
}

interface Lasting {
  waitUntil(work: Promise<unknown>): void
}

interface Fetched {
  request: Request
  respondWith(answer: Promise<Response>): void
}

const scope = globalThis as unknown as Scope
const folder = scope.registration.scope
const built = __BUILT__
const own = cacheOf(folder, built.id)
const byName = new Map(built.files.map((file) => [file.name, file]))
const packed = new URLSearchParams(scope.location.search).has('packed')

// It need not wait for open windows to close: what they were fetched from stays for them.
scope.addEventListener('install', (event) => event.waitUntil(keepAll().then(() => scope.skipWaiting())))
scope.addEventListener('activate', (event) => event.waitUntil(takeOver()))
scope.addEventListener('fetch', (event) => {
  const { request } = event
  const name = nameIn(folder, request.url)
  if (request.method === 'GET' && name !== undefined) event.respondWith(answer(request, name))
})

/** Keeps every file of this build, or none: half a build must never answer. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(own)
  try {
    for (const file of built.files) {
      if (!keeps(file.name, packed, built.files)) continue
      const key = keyOf(folder, file)
      const had = await caches.match(key)
      await cache.put(key, had ?? (await fetchChecked(file)))
    }
  } catch (reason) {
    await caches.delete(own)
    throw reason
  }
}

/** Fetches a file and makes sure that it is this build's: a host in the midst of an upload gives some of both. */
async function fetchChecked(file: Listed): Promise<Response> {
  const url = new URL(file.name, folder)
  const response = await fetch(url, { cache: 'no-cache', credentials: 'same-origin' })
  if (!response.ok) throw new Error(`${file.name} answered ${response.status}`)
  const body = await response.arrayBuffer()
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body))
  const hex = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  if (hex !== file.digest) throw new Error(`${file.name} is not of this build`)
  const headers = new Headers(response.headers)
  // The body is unpacked by now, whatever the host sent it as.
  for (const told of ['Content-Encoding', 'Content-Length', 'Transfer-Encoding']) headers.delete(told)
  return new Response(body, { headers })
}

async function takeOver(): Promise<void> {
  await Promise.all(outlived(folder, own, await caches.keys()).map((name) => caches.delete(name)))
  await scope.clients.claim()
}

async function answer(request: Request, name: string): Promise<Response> {
  const tag = tagIn(request.url)
  const file = byName.get(name)
  if (file !== undefined && (tag === undefined || tag === file.tag)) {
    const kept = await caches.match(keyOf(folder, file))
    if (kept !== undefined) return kept
  }
  return (await fromEarlier(name, tag)) ?? fetch(request)
}

/** A file of an earlier build, for a window that is still open from then. */
async function fromEarlier(name: string, tag: string | undefined): Promise<Response | undefined> {
  for (const cacheName of (await caches.keys()).filter((each) => each.startsWith(cacheOf(folder, '')) && each !== own)) {
    const cache = await caches.open(cacheName)
    const start = keyOf(folder, { name, tag: tag ?? '' })
    const key = (await cache.keys()).find(({ url }) => (tag === undefined ? url.startsWith(start) : url === start))
    if (key !== undefined) return cache.match(key)
  }
  return undefined
}
