import { describe, expect, it } from 'vitest'
import type { Kept, Put } from '../keep/kept.ts'
import { Saving, type ToKeep } from './saving.ts'

const sheet = (text: string): ToKeep => ({ name: 'a', title: 'A', files: { a: text }, at: 1, shipped: false })

/** A store whose every answer waits to be let go. */
function bench(answer: (kept: Kept, nth: number) => Put = (kept) => kept.version + 10) {
  const puts: Kept[] = []
  const said: string[] = []
  let letGo: (() => void)[] = []
  const saving = new Saving(
    (kept) => {
      const nth = puts.push(kept)
      return new Promise<void>((resolve) => letGo.push(resolve)).then(() => answer(kept, nth))
    },
    {
      kept: ({ files }, version) => said.push(`kept ${files['a']} as ${version}`),
      overtaken: ({ files }) => said.push(`overtaken ${files['a']}`),
      failed: () => said.push('failed'),
    },
  )
  const step = async (): Promise<void> => {
    const now = letGo
    letGo = []
    for (const go of now) go()
    await new Promise((resolve) => setTimeout(resolve))
  }
  return { saving, puts, said, step }
}

describe('Saving', () => {
  it('makes each change to the version before it, and leaves out what a later one holds', async () => {
    const { saving, puts, said, step } = bench()
    saving.standsOn('a', 7)
    for (const text of ['one', 'two', 'three']) void saving.keep(sheet(text))
    expect(saving.unkept.value).toBe(true)
    await step()
    await step()
    expect(puts.map((p) => [p.files['a'], p.version])).toEqual([['one', 7], ['three', 17]])
    expect(said).toEqual(['kept one as 17', 'kept three as 27'])
    expect(saving.unkept.value).toBe(false)
    expect(saving.version('a')).toBe(27)
  })

  it('says once that another window was first, with the latest there is', async () => {
    const { saving, puts, said, step } = bench(() => undefined)
    void saving.keep(sheet('one'))
    void saving.keep(sheet('two'))
    await step()
    expect(said).toEqual(['overtaken two'])
    expect(puts).toHaveLength(1)
    expect(saving.unkept.value).toBe(false)
  })

  it('goes on after a failure', async () => {
    const { saving, said, step } = bench((_, nth) => {
      if (nth === 1) throw new Error('full')
      return 1
    })
    void saving.keep(sheet('one'))
    await step()
    void saving.keep(sheet('two'))
    await step()
    expect(said).toEqual(['failed', 'kept two as 1'])
  })
})
