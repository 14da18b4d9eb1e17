import type { Door } from './door.ts'
import type { DefinedFunction, Edit, OpenPayload, Reckoning, System, View } from './protocol.ts'
import { readAnswer, readReckoning, readView } from './read.ts'

/** The reckoner's methods in the page's own types. Each rejects with Refused or Died. */
export class Reckoner {
  readonly #door: Door

  constructor(door: Door) {
    this.#door = door
  }

  async open(payload: OpenPayload): Promise<View> {
    return readView((await this.#door.call('open', payload)).json)
  }

  /** Makes one change. Several are asked one by one, so that one that is refused does not take the others with it. */
  async edit(edit: Edit): Promise<View> {
    return readView((await this.#door.call('edit', { edits: [edit] })).json)
  }

  async reckon(system: System): Promise<Reckoning> {
    return readReckoning((await this.#door.call('reckon', { system })).json)
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
