// A partner's program writes the workbook in its own way. What it changed must
// still come back as just that; package back's own test does it, given the
// library that is installed here.
import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { expect, it } from 'vitest'

it('comes back the same from another library', () => {
  const said = execFileSync('go', ['test', '-count=1', '-v', '-run', '^TestRewrittenByAnotherLibrary$', './engine/workbook/back'], {
    cwd: join(import.meta.dirname, '../..'),
    env: { ...process.env, THAWBOOK_REWRITE: 'yes' },
    encoding: 'utf8',
  })
  expect(said).toContain('--- PASS: TestRewrittenByAnotherLibrary')
})
