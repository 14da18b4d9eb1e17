import { describe, expect, it } from 'vitest'
import { Refused } from '../door/read.ts'
import { type Asked, Latest } from './latest.ts'

/** An asker whose answers are given by hand. */
function byHand() {
  const asked: string[] = []
  const told: Asked<string>[] = []
  const waiting: { resolve: (answer: string) => void; reject: (reason: unknown) => void }[] = []
  const latest = new Latest<string, string>(
    (question) => {
      asked.push(question)
      return new Promise((resolve, reject) => waiting.push({ resolve, reject }))
    },
    (now) => told.push(now),
  )
  const settle = async (): Promise<void> => {
    for (let i = 0; i < 5; i++) await Promise.resolve()
  }
  return { latest, asked, told, waiting, settle }
}

describe('Latest', () => {
  it('asks the newest of what came meanwhile, and nothing between', async () => {
    const { latest, asked, told, waiting, settle } = byHand()
    for (const question of ['a', 'b', 'c']) latest.ask(question)
    expect(asked).toEqual(['a'])
    waiting[0]?.resolve('A')
    await settle()
    expect(asked).toEqual(['a', 'c'])
    expect(told.at(-1)).toEqual({ answer: 'A', asking: true })
    waiting[1]?.resolve('C')
    await settle()
    expect(told.at(-1)).toEqual({ answer: 'C', asking: false })
  })

  it('lets an answer stand while the next is awaited', async () => {
    const { latest, told, waiting, settle } = byHand()
    latest.ask('a')
    waiting[0]?.resolve('A')
    await settle()
    latest.ask('b')
    expect(told.at(-1)).toEqual({ answer: 'A', asking: true })
  })

  it('tells trouble with its hint, and goes on', async () => {
    const { latest, told, waiting, settle } = byHand()
    latest.ask('a')
    waiting[0]?.reject(new Refused({ code: 'x', message: 'no line is called "a"', hint: 'did you mean "b"?' }))
    await settle()
    expect(told.at(-1)).toEqual({ trouble: { text: 'no line is called "a"', hint: 'did you mean "b"?' }, asking: false })
    latest.ask('b')
    waiting[1]?.resolve('B')
    await settle()
    expect(told.at(-1)).toEqual({ answer: 'B', asking: false })
  })

  it('tells nothing once it has ended', async () => {
    const { latest, told, waiting, settle } = byHand()
    latest.ask('a')
    latest.end()
    const before = told.length
    waiting[0]?.resolve('A')
    await settle()
    expect(told).toHaveLength(before)
  })
})
