// What the engine says the workbooks must come to, as engine/workbook's test
// TestAnswersForOtherEngines writes it.
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'

export interface Place {
  sheet: string
  cell: string
}

export interface Case {
  /** Which of the cells to set, and to what. */
  set: { at: number; value: number | string }[]
  /** What each of the worked cells must come to; null for no number. */
  want: (number | null)[]
  /** Which of them hang on something that comes to no number. */
  doubtful: number[]
  /** Which of them may fall to either side of a whole number. */
  edge: number[]
}

export interface Answers {
  inputs: Place[]
  worked: (Place & { id: string })[]
  cases: Case[]
}

export interface Handed {
  name: string
  bytes: Uint8Array
  answers: Answers
}

/** All workbooks with their answers, made afresh. */
export function handedOver(): Handed[] {
  const dir = mkdtempSync(join(tmpdir(), 'thawbook-'))
  try {
    execFileSync('go', ['test', '-count=1', '-run', '^TestAnswersForOtherEngines$', './engine/workbook'], {
      cwd: join(import.meta.dirname, '../..'),
      env: { ...process.env, THAWBOOK_ANSWERS: dir },
      stdio: ['ignore', 'ignore', 'inherit'],
    })
    return readdirSync(dir)
      .filter((file) => file.endsWith('.xlsx'))
      .map((file) => ({
        name: basename(file, '.xlsx'),
        bytes: new Uint8Array(readFileSync(join(dir, file))),
        answers: JSON.parse(readFileSync(join(dir, file.replace('.xlsx', '.json')), 'utf8')) as Answers,
      }))
  } finally {
    rmSync(dir, { recursive: true })
  }
}
