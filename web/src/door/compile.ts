/** Where a program lies: plain, and packed where that is to be asked for first. */
export interface Lies {
  plain: string
  packed?: string | undefined
}

/** Whether packed programs pay: not from this machine itself, where reading is quicker than unpacking, nor where the browser cannot. */
export function packedPays(hostname: string): boolean {
  const here = hostname === 'localhost' || hostname === '[::1]' || /^127(\.\d+){3}$/.test(hostname) || hostname.endsWith('.localhost')
  return !here && typeof DecompressionStream !== 'undefined'
}

/** Fetches and compiles a program; the plain one where the packed one cannot be had or used. Rejects when neither can. */
export async function compile({ plain, packed }: Lies, fetchIt: (url: string) => Promise<Response> = (url) => fetch(url)): Promise<WebAssembly.Module> {
  if (packed !== undefined) {
    const unpacked = await fetchIt(packed).then(unpack).catch(() => undefined)
    const module = unpacked && (await WebAssembly.compileStreaming(unpacked).catch(() => undefined))
    if (module !== undefined) return module
  }
  const response = await fetchIt(plain)
  if (!response.ok) throw new Error(`${plain} answered ${response.status}`)
  const type = response.headers.get('Content-Type') ?? ''
  if (type.startsWith('application/wasm')) return WebAssembly.compileStreaming(response)
  // Some plain hosts do not know the type, and streaming insists on it.
  return WebAssembly.compile(await response.arrayBuffer())
}

/**
 * The program in a packed answer, as it comes in; undefined when it is neither
 * packed nor a program. Some hosts mark such a file as encoded, and then the
 * browser has unpacked it already.
 */
export async function unpack(response: Response): Promise<Response | undefined> {
  if (!response.ok || response.body === null) return undefined
  const reader: ReadableStreamDefaultReader<Uint8Array<ArrayBuffer>> = response.body.getReader()
  const { value: first = new Uint8Array() } = await reader.read()
  const begins = (...bytes: number[]): boolean => bytes.every((byte, i) => first[i] === byte)
  const gzip = begins(0x1f, 0x8b)
  if (!gzip && !begins(0, 0x61, 0x73, 0x6d)) {
    await reader.cancel()
    return undefined
  }
  const whole = new ReadableStream<Uint8Array<ArrayBuffer>>({
    start: (to) => to.enqueue(first),
    async pull(to) {
      const { done, value } = await reader.read()
      if (done) to.close()
      else to.enqueue(value)
    },
    cancel: (reason) => reader.cancel(reason),
  })
  return new Response(gzip ? whole.pipeThrough(new DecompressionStream('gzip')) : whole, { headers: { 'Content-Type': 'application/wasm' } })
}
