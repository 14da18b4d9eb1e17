import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { policy } from './content-policy.ts'

it('is what the command line serves too, which adds what only a header can say', () => {
  const text = readFileSync(new URL('../../cmd/thawbook/site.go', import.meta.url), 'utf8')
  const said = /const contentPolicy = ([^]*?"\n)\n/.exec(text)?.[1] ?? ''
  const served = [...said.matchAll(/"([^"]*)"/g)].map((match) => match[1]).join('')
  expect(served.split('; ')).toEqual([...policy.split('; '), "frame-ancestors 'none'"])
})
