import type { Door } from './door.ts'
import type { DefinedFunction, Edit, OpenPayload, Reckoning, System, Trial, View } from './protocol.ts'
import { layOver, readAnswer, readReckoning, readTrial, readView } from './read.ts'

/** The reckoner's methods in the page's own types. Each rejects with Refused or Died. */
export class Reckoner {
  readonly #door: Door

  constructor(door: Door) {
    this.#door = door
  }

  async open(payload: OpenPayload): Promise<View> {
    return readView((await this.#door.call('open', payload)).json)
  }

  /** Makes changes, all or none. What belongs apart is asked one by one, so that one that is refused does not take the others with it. */
  async edit(...edits: readonly Edit[]): Promise<View> {
    return readView((await this.#door.call('edit', { edits })).json)
  }

  /** Shows the sheet with a change that is not written into it; with none, as it is written. */
  async try(edits: readonly Edit[]): Promise<Trial> {
    return readTrial((await this.#door.call('try', { edits })).json)
  }

  /** Puts another text in place of the open sheet's own. */
  async write(text: string): Promise<View> {
    return readView((await this.#door.call('write', { text })).json)
  }

  /** The seasons, in whole. Given what was told last, only what differs has to cross. */
  async reckon(system: System, told?: Reckoning): Promise<Reckoning> {
    const reckoning = readReckoning((await this.#door.call('reckon', { system, changed: told !== undefined })).json)
    return told === undefined ? reckoning : layOver(told, reckoning)
  }

  /** Every season's value of one line, in the order the seasons were drawn. */
  async column(id: string): Promise<Float64Array> {
    const { json, bytes } = await this.#door.call('column', { id })
    readAnswer<unknown>(json)
    // Copied, because a Float64Array must start on a multiple of eight.
    return new Float64Array((bytes ?? new Uint8Array()).slice().buffer)
  }

  async functions(): Promise<DefinedFunction[]> {
    return readAnswer<DefinedFunction[] | null>((await this.#door.call('functions', {})).json) ?? []
  }
}
