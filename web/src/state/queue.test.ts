import { describe, expect, it } from 'vitest'
import type { Edit } from '../door/protocol.ts'
import { type Ask, foldEdit, type Round, Rounds } from './queue.ts'

const setTaps = (is: number): Edit => ({ about: 'taps', set: { is } })
const setFuel = (choose: string): Edit => ({ about: 'fuel', set: { choose } })

/** A bench that shows each round and lets it end when the test says. */
function bench() {
  const rounds: Round[] = []
  const ends: (() => void)[] = []
  const frames: (() => void)[] = []
  const queue = new Rounds(
    (round) => {
      rounds.push(round)
      return new Promise((resolve) => ends.push(resolve))
    },
    (begin) => frames.push(begin),
  )
  const frame = (): void => frames.splice(0).forEach((begin) => begin())
  const end = async (): Promise<void> => {
    ends.shift()?.()
    await Promise.resolve()
    await Promise.resolve()
  }
  return { rounds, frames, queue, frame, end }
}

describe('foldEdit', () => {
  it('keeps the last word on each line, in the order of last words', () => {
    const folded = [setTaps(1), setFuel('oil'), setTaps(12)].reduce<Ask[]>(foldEdit, [])
    expect(folded).toEqual([setFuel('oil'), setTaps(12)])
  })

  const fold = (...asks: Ask[]): Ask[] => asks.reduce<Ask[]>(foldEdit, [])
  const label: Edit = { about: 'taps', set: { label: 'Spouts' } }
  const tried = (is: number, about = 'taps'): Ask => ({ about, set: { is }, trial: true })

  it('lets a guess stand for a number, but not for a label', () => {
    const guess: Edit = { about: 'taps', set: { guess: { low: 1, likely: 2, high: 3 } } }
    expect(fold(setTaps(1), label, guess)).toEqual([label, guess])
  })

  it('keeps everything that comes, goes or moves, in its order', () => {
    const asks: Ask[] = [{ about: 'taps', set: {}, move: { by: 1 } }, setTaps(1), { about: 'taps', set: {}, move: { by: 1 } }, { about: 'taps', set: {}, remove: true }, { about: '', set: {}, text: 'a' }, { about: '', set: {}, text: 'b' }]
    expect(fold(...asks)).toEqual(asks)
  })

  it('tries the last of what is dragged only, and not what has been taken', () => {
    expect(fold(tried(1), setFuel('oil'), tried(2))).toEqual([setFuel('oil'), tried(2)])
    expect(fold(tried(1), tried(2, 'room'))).toEqual([tried(2, 'room')])
    expect(fold(tried(1), setTaps(2))).toEqual([setTaps(2)])
    expect(fold(setTaps(2), tried(3))).toEqual([setTaps(2), tried(3)])
  })
})

describe('Rounds', () => {
  it('gathers what is typed within a frame into one round', () => {
    const { rounds, frames, queue, frame } = bench()
    queue.ask(setTaps(1))
    queue.ask(setTaps(15))
    queue.ask(setTaps(150))
    expect(frames).toHaveLength(1)
    expect(rounds).toHaveLength(0)
    frame()
    expect(rounds).toEqual([{ edits: [setTaps(150)] }])
  })

  it('never has more than one round at work and one waiting', async () => {
    const { rounds, queue, frame, end } = bench()
    queue.ask(setTaps(1))
    frame()
    for (let i = 0; i < 50; i++) {
      queue.ask(setTaps(i))
      frame()
    }
    expect(rounds).toHaveLength(1)
    await end()
    frame()
    expect(rounds).toHaveLength(2)
    expect(rounds[1]).toEqual({ edits: [setTaps(49)] })
    await end()
    frame()
    expect(rounds).toHaveLength(2)
  })

  it('reckons without an edit when only that is asked', () => {
    const { rounds, queue, frame } = bench()
    queue.ask()
    frame()
    expect(rounds).toEqual([{ edits: [] }])
  })

  it('forgets what was asked of another sheet', () => {
    const { rounds, queue, frame } = bench()
    queue.ask(setTaps(1))
    queue.drop()
    frame()
    expect(rounds).toHaveLength(0)
    expect(queue.busy).toBe(false)
  })

  it('is idle only when nothing waits and nothing is at work', async () => {
    const { queue, frame, end } = bench()
    let idle = false
    queue.ask(setTaps(1))
    void queue.idle().then(() => (idle = true))
    frame()
    queue.ask(setFuel('oil'))
    await end()
    expect(idle).toBe(false)
    frame()
    await end()
    expect(idle).toBe(true)
  })

  it('goes on after a round that failed', async () => {
    let tries = 0
    const queue = new Rounds(
      () => (++tries === 1 ? Promise.reject(new Error('no')) : Promise.resolve()),
      (begin) => queueMicrotask(begin),
    )
    queue.ask()
    await queue.idle()
    queue.ask()
    await queue.idle()
    expect(tries).toBe(2)
  })
})
