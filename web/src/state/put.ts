import type { Trial, View } from '../door/protocol.ts'
import type { Reckoner } from '../door/reckoner.ts'
import { type Ask, isBatch, isRewrite, isTried } from './queue.ts'

/** Puts what is asked into the sheet, or shows it when it is only tried. Rejects with Refused or Died. */
export function put(reckoner: Reckoner, ask: Ask): Promise<View | Trial> {
  if (isRewrite(ask)) return reckoner.write(ask.text)
  if (isBatch(ask)) return reckoner.edit(...ask.edits)
  const { about, set } = ask
  if (isTried(ask)) return reckoner.try(Object.keys(set).length > 0 ? [{ about, set }] : [])
  return reckoner.edit(ask)
}
