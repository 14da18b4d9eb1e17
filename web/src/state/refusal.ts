import { Refused } from '../door/read.ts'
import type { Notice } from './kinds.ts'

/** What the reckoner refused, as a notice. */
export function refusal(before: string, { message, hint }: Refused): Notice {
  return { tone: 'trouble', text: before + message, ...(hint === '' ? {} : { hint }) }
}

/** An error of any sort in words. */
export function wordsOf(reason: unknown): string {
  return reason instanceof Error ? reason.message : String(reason)
}

/** Why a sheet could not be opened, as a notice. */
export function openingTrouble(name: string, reason: unknown): Notice {
  if (reason instanceof Refused) return refusal(`“${name}” could not be opened: `, reason)
  return { tone: 'trouble', text: `The reckoner stopped while opening “${name}” (${wordsOf(reason)}).` }
}
