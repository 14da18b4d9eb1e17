import { signal, type Signal } from '@preact/signals'
import { isKept, type Kept } from '../keep/kept.ts'
import type { Files, View } from '../door/protocol.ts'
import { readView } from '../door/read.ts'
import type { Notice, Outside } from './kinds.ts'
import type { Ledger } from './ledger.ts'
import { type Answers, editsFor, type FullEdit, madeFrom, untitled, withOwnHead } from './questions.ts'
import { fileNameFor } from './scenario.ts'
import { chainOf, type ShelfEntry } from './shelf.ts'

/** A sheet that was taken off the shelf and can still be put back. */
export interface Taken {
  name: string
  title: string
  value: unknown
}

/** The page's state as far as whole sheets have to do with it. */
export interface Page {
  readonly ledger: Ledger
  readonly notice: Signal<Notice | undefined>
  readonly shelf: Signal<readonly ShelfEntry[] | undefined>
  filesAtHand(): Promise<Files>
  openFile(name: string, text: string): Promise<void>
}

/**
 * What can be done with whole sheets while none is open: rename, copy, take
 * away and put back, and make a new one from another's text.
 */
export class Shelving {
  /** What was taken away last. */
  readonly taken = signal<Taken | undefined>(undefined)
  /** Whether the questions for a new sheet are shown. */
  readonly asking = signal(false)
  readonly #outside: Pick<Outside, 'door' | 'keep' | 'now' | 'fetchText'>
  readonly #page: Page

  constructor(outside: Pick<Outside, 'door' | 'keep' | 'now' | 'fetchText'>, page: Page) {
    this.#outside = outside
    this.#page = page
  }

  /** Gives a kept sheet another title. Its file keeps its name. */
  async rename(kept: Kept, title: string): Promise<void> {
    const view = await this.#edited(kept.name, kept.files, [{ about: '', set: { title } }])
    if (view !== undefined) await this.#put({ ...kept, title: view.title, files: { ...kept.files, [kept.name]: view.source } })
  }

  /** Puts a copy of a sheet beside it, under a file name and a title of its own. */
  async copy(name: string, title: string, files: Files): Promise<void> {
    const copied = await this.#page.ledger.free(name)
    const { [name]: text = '', ...others } = files
    const view = await this.#edited(copied, { ...others, [copied]: text }, [{ about: '', set: { title: `${title}, a copy` } }])
    if (view === undefined) return
    await this.#put({ name: copied, title: view.title, files: { ...others, [copied]: view.source }, at: this.#outside.now(), shipped: false, version: 0 })
  }

  /** Takes a sheet off the shelf. `putBack` undoes it until another is taken. */
  async take(name: string, title: string): Promise<void> {
    const value = await this.#outside.keep.forget(name).catch(() => undefined)
    if (value === undefined) return
    this.taken.value = { name, title, value }
    await this.#told(name, 0)
  }

  /** Puts back what was taken last. */
  async putBack(): Promise<void> {
    const taken = this.taken.value
    this.taken.value = undefined
    if (taken === undefined) return
    await this.#outside.keep.restore(taken.name, taken.value).catch(() => this.#trouble('It could not be put back.'))
    const back = await this.#outside.keep.get(taken.name).catch(() => undefined)
    await this.#told(taken.name, back !== undefined && isKept(back) ? back.version : 0)
  }

  /** Puts a copy of a shipped sheet, as shipped or as changed here, among the person's own. */
  async copyShipped(entry: ShelfEntry): Promise<void> {
    const files = await this.#page.filesAtHand()
    const chain = chainOf(entry.file, this.#page.shelf.value ?? [])
    await this.copy(entry.file, entry.title, Object.fromEntries(chain.map((file) => [file, files[file] ?? ''])))
  }

  /** Makes the sheet of whoever answered, and opens it. */
  async make(answers: Answers): Promise<void> {
    const shipped = await this.#example()
    if (shipped === undefined) return
    const name = fileNameFor(answers.title.trim() || untitled, [])
    const view = await this.#edited(name, { [name]: withOwnHead(shipped) }, editsFor(answers))
    if (view === undefined) return
    await this.#page.openFile(name, view.source)
    this.#page.notice.value = {
      tone: 'news',
      text: 'The sheet is made from your answers.',
      hint: 'Go down its chapters and put your own numbers where Heron Ridge’s still stand.',
    }
  }

  /** The text of the sheet that new ones are made from, as it was shipped; undefined when it cannot be had. */
  async #example(): Promise<string | undefined> {
    return this.#outside.fetchText(`scenarios/${madeFrom}`).catch(() => {
      this.#trouble('The sheet to start from could not be fetched.')
      return undefined
    })
  }

  async #edited(name: string, files: Files, edits: readonly FullEdit[]): Promise<View | undefined> {
    const { door } = this.#outside
    try {
      if (door.dead) door.restart()
      // Asked together, so that no other sheet can be opened between the two.
      const [opened, edited] = await Promise.all([door.call('open', { name, files }), door.call('edit', { edits })])
      const view = [readView(opened.json), readView(edited.json)].find((v) => v.kept) ?? readView(edited.json)
      if (!view.kept) return view
      const first = view.diagnostics[0]
      this.#trouble(`“${name}” cannot be changed: ${first?.message ?? 'it does not read as a sheet'}.`)
    } catch (reason) {
      this.#trouble(`“${name}” could not be changed (${reason instanceof Error ? reason.message : String(reason)}).`)
    }
    return undefined
  }

  async #put(kept: Kept): Promise<void> {
    try {
      const version = await this.#outside.keep.put({ ...kept, at: this.#outside.now() })
      if (version === undefined) this.#trouble('Another window changed that sheet just now.', 'Nothing was done. Try again.')
      else await this.#told(kept.name, version)
    } catch {
      this.#trouble('This browser keeps nothing between visits.')
    }
  }

  async #told(name: string, version: number): Promise<void> {
    this.#page.ledger.tell({ name, version })
    await this.#page.ledger.recall()
  }

  #trouble(text: string, hint?: string): void {
    this.#page.notice.value = { tone: 'trouble', text, ...(hint === undefined ? {} : { hint }) }
  }
}
