import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { compile, packedPays, unpack } from './compile.ts'

// The smallest module: its magic word and version, and a custom section to make it longer than a chunk.
const filling = new Uint8Array(70_000)
const size = filling.length + 1
const program = new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0, 0, (size & 0x7f) | 0x80, ((size >> 7) & 0x7f) | 0x80, size >> 14, 0, ...filling])

const asked: string[] = []
const host = (files: Record<string, () => Response>) => (url: string): Promise<Response> => {
  asked.push(url)
  return Promise.resolve(files[url]?.() ?? new Response('none', { status: 404 }))
}
const plain = (): Response => new Response(program, { headers: { 'Content-Type': 'application/wasm' } })
const both = { plain: 'p.wasm', packed: 'p.wasm.gz' }

describe('compile', () => {
  it.each([
    ['packed', () => new Response(gzipSync(program))],
    ['unpacked by the browser already', () => new Response(program)],
  ])('takes the packed program, %s', async (_how, packed) => {
    asked.length = 0
    const module = await compile(both, host({ 'p.wasm.gz': packed }))
    expect(module).toBeInstanceOf(WebAssembly.Module)
    expect(asked).toEqual(['p.wasm.gz'])
  })

  it.each([
    ['missing', () => new Response('none', { status: 404 })],
    ['a page that says it is missing', () => new Response('<!doctype html>')],
    ['cut short', () => new Response(gzipSync(program).subarray(0, 60))],
    ['empty', () => new Response('')],
  ])('falls back on the plain one when the packed is %s', async (_how, packed) => {
    const module = await compile(both, host({ 'p.wasm.gz': packed, 'p.wasm': plain }))
    expect(module).toBeInstanceOf(WebAssembly.Module)
  })

  it('does with a host that does not know the type, and says what a host answered', async () => {
    expect(await compile({ plain: 'p.wasm' }, host({ 'p.wasm': () => new Response(program) }))).toBeInstanceOf(WebAssembly.Module)
    await expect(compile(both, host({}))).rejects.toThrow('p.wasm answered 404')
  })
})

describe('unpack', () => {
  it('gives back every byte', async () => {
    const unpacked = await unpack(new Response(gzipSync(program)))
    expect(new Uint8Array((await unpacked?.arrayBuffer()) ?? new ArrayBuffer())).toEqual(program)
  })
})

describe('packedPays', () => {
  it.each([
    ['127.0.0.1', false],
    ['127.1.2.3', false],
    ['localhost', false],
    ['[::1]', false],
    ['thawbook.example', true],
    ['127.example', true],
  ])('from %s: %s', (hostname, pays) => expect(packedPays(hostname)).toBe(pays))
})
