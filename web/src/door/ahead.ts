import type { Reckoning, View } from './protocol.ts'
import { readReckoning, readView } from './read.ts'

/** What a sheet came to when the page was built. */
export interface Ahead {
  view: View
  reckoning: Reckoning
}

/** Reads what was reckoned ahead, each part as the text the door answered; undefined when it is not of this sheet's text as it is shipped now. */
export function readAhead(json: string, text: string): Ahead | undefined {
  try {
    const said = JSON.parse(json) as { view: string; reckoning: string }
    const view = readView(said.view)
    return view.source === text ? { view, reckoning: readReckoning(said.reckoning) } : undefined
  } catch {
    return undefined
  }
}
