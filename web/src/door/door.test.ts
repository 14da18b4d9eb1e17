import { describe, expect, it } from 'vitest'
import { Died, Door } from './door.ts'
import { FakeWorker } from './fake.ts'

const start = { kind: 'start', loader: 'l' } as const
const program = new WebAssembly.Module(new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]))

function bench(compile = () => Promise.resolve(program)) {
  const workers: FakeWorker[] = []
  const door = new Door(() => {
    const worker = new FakeWorker()
    workers.push(worker)
    return worker
  }, start, compile)
  return { door, workers }
}

const sheet = (taps: number) => ({ name: 'a', files: { a: JSON.stringify({ title: 'A', taps }) } })

describe('Door', () => {
  it('gives each call its own answer', async () => {
    const { door } = bench()
    const [first, second] = await Promise.all([door.call('open', sheet(3)), door.call('reckon', {})])
    expect(JSON.parse(first.json)).toMatchObject({ title: 'A' })
    expect(JSON.parse(second.json)).toMatchObject({ paragraph: '3 taps' })
  })

  it('rejects all that wait when the reckoner dies, and what comes after', async () => {
    const { door, workers } = bench()
    const calls = [door.call('open', sheet(666)), door.call('reckon', {})]
    const ends = await Promise.allSettled(calls)
    expect(ends.map((e) => e.status === 'rejected' && e.reason instanceof Died)).toEqual([true, true])
    expect(door.dead).toBe(true)
    expect(workers[0]?.terminated).toBe(true)
    await expect(door.call('reckon', {})).rejects.toThrow('RangeError')
  })

  it('answers again after it was started again', async () => {
    const { door, workers } = bench()
    await door.call('open', sheet(666)).catch(() => undefined)
    door.restart()
    expect(door.dead).toBe(false)
    expect(JSON.parse((await door.call('open', sheet(4))).json)).toMatchObject({ title: 'A' })
    expect(workers).toHaveLength(2)
  })

  it('takes an error of the worker itself for a death', async () => {
    const { door, workers } = bench()
    await door.call('open', sheet(1))
    const worker = workers[0]
    if (worker === undefined) throw new Error('no worker')
    worker.hold = true
    const waiting = door.call('reckon', {})
    await Promise.resolve()
    worker.fail('out of memory')
    await expect(waiting).rejects.toThrow('out of memory')
  })

  it('compiles the reckoner once and hands it to every worker', async () => {
    let compiled = 0
    const { door, workers } = bench(() => {
      compiled++
      return Promise.resolve(program)
    })
    await door.call('open', sheet(3))
    door.restart()
    await door.call('open', sheet(4))
    expect(compiled).toBe(1)
    expect(workers.map((w) => w.given)).toEqual([program, program])
  })

  it('dies of a reckoner that cannot be had, and asks for it again when started again', async () => {
    const answers = [Promise.reject(new Error('reckoner.wasm answered 404')), Promise.resolve(program)]
    const { door } = bench(() => answers.shift() ?? Promise.reject(new Error('asked too often')))
    await new Promise((resolve) => setTimeout(resolve))
    await expect(door.call('open', sheet(3))).rejects.toThrow('answered 404')
    door.restart()
    expect(JSON.parse((await door.call('open', sheet(4))).json)).toMatchObject({ title: 'A' })
  })
})
