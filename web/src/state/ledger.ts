import { batch, type Signal, signal } from '@preact/signals'
import { isKept, type Kept, type Spoilt } from '../keep/kept.ts'
import type { News } from '../keep/windows.ts'
import type { Notice, OpenSheet, Outside } from './kinds.ts'
import { freeName } from './names.ts'
import { Saving, type ToKeep } from './saving.ts'
import type { ShelfEntry } from './shelf.ts'

/** The part of the page's state that keeping has to do with. */
export interface Open {
  readonly sheet: Signal<OpenSheet | undefined>
  readonly notice: Signal<Notice | undefined>
  readonly shelf: Signal<readonly ShelfEntry[] | undefined>
}

/**
 * What is kept in this browser, as the page knows it. Each change of the open
 * sheet is kept in a new version; when another window has kept one first,
 * this window's goes on under a name of its own and nothing is written over.
 */
export class Ledger {
  /** The sheets kept here, the last changed first. */
  readonly kept = signal<readonly Kept[]>([])
  /** What is kept here and cannot be used. */
  readonly spoilt = signal<readonly Spoilt[]>([])
  /** Set when another window has kept the open sheet in a version of its own. */
  readonly elsewhere = signal<News | undefined>(undefined)
  readonly #outside: Pick<Outside, 'keep' | 'windows' | 'now'>
  readonly #open: Open
  readonly #saving: Saving

  constructor(outside: Pick<Outside, 'keep' | 'windows' | 'now'>, open: Open) {
    this.#outside = outside
    this.#open = open
    this.#saving = new Saving((kept) => outside.keep.put(kept), {
      kept: ({ name }, version) => outside.windows.tell({ name, version }),
      overtaken: (kept) => void this.#part(kept),
      failed: () => this.#tellNothingKept(),
    })
    outside.windows.onnews = (news) => this.#hear(news)
  }

  /** Whether a change of the sheet is not yet safely kept. */
  get unkept(): boolean {
    return this.#saving.unkept.value
  }

  /** Says which version of a sheet was opened here; 0 when none is kept. */
  standsOn(name: string, version: number): void {
    this.#saving.standsOn(name, version)
  }

  /** Keeps the open sheet as it is. */
  async keep(): Promise<void> {
    const sheet = this.#open.sheet.value
    if (sheet === undefined) return
    await this.#saving.keep(toKeep(sheet, this.#outside.now()))
    await this.recall()
  }

  /** Fetches what is kept here. */
  async recall(): Promise<void> {
    const all = await this.#outside.keep.all().catch((): (Kept | Spoilt)[] => [])
    batch(() => {
      this.kept.value = all.filter(isKept)
      this.spoilt.value = all.filter((found): found is Spoilt => !isKept(found))
    })
  }

  /** Looks whether another window has changed the open sheet, for when nothing was heard: this window slept. */
  async lookAround(): Promise<void> {
    await this.recall()
    const name = this.#open.sheet.value?.name
    const kept = this.kept.value.find((k) => k.name === name)
    if (kept !== undefined && !this.unkept) this.#hear({ name: kept.name, version: kept.version })
  }

  /** Goes on with the open sheet under a name of its own, so that both windows' versions stay. */
  async keepBoth(): Promise<void> {
    const sheet = this.#open.sheet.value
    if (sheet !== undefined) await this.#part(toKeep(sheet, this.#outside.now()))
  }

  /** A file name like this one that no sheet has, kept or shipped. */
  async free(name: string): Promise<string> {
    await this.recall()
    const taken = new Set([...this.kept.value, ...this.spoilt.value].map((k) => k.name))
    return freeName(name, (n) => taken.has(n) || (this.#open.shelf.value ?? []).some((e) => e.file === n))
  }

  /** Tells the other windows of a change made to what is kept. */
  tell(news: News): void {
    this.#outside.windows.tell(news)
  }

  #hear(news: News): void {
    void this.recall()
    const { name, version } = news
    if (name === this.#open.sheet.value?.name && version !== 0 && version !== this.#saving.version(name)) this.elsewhere.value = news
  }

  /** Keeps a sheet that another window was quicker with under another name, and goes on with that one. */
  async #part(kept: ToKeep): Promise<void> {
    const name = await this.free(kept.name)
    // Looked at only now: it may have been changed while the name was sought.
    const sheet = this.#open.sheet.value
    const { [kept.name]: text = '', ...others } = kept.files
    const files = { ...others, [name]: sheet?.name === kept.name ? sheet.view.source : text }
    batch(() => {
      if (sheet?.name === kept.name) this.#open.sheet.value = { ...sheet, name, files, shipped: false, changed: true }
      this.elsewhere.value = undefined
      this.#open.notice.value = {
        tone: 'news',
        text: `Another window has changed this sheet too. What you have here is kept as “${name}”.`,
        hint: 'Both are in the list of sheets.',
      }
    })
    await this.#saving.keep({ ...kept, name, files, shipped: false })
    await this.recall()
  }

  #tellNothingKept(): void {
    this.#open.notice.value = { tone: 'trouble', text: 'This browser keeps nothing between visits.', hint: 'Save the sheet to a file before leaving.' }
  }
}

function toKeep({ name, files, shipped, view }: OpenSheet, at: number): ToKeep {
  return { name, files, shipped, title: view.title, at }
}
