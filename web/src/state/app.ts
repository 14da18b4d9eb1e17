import { batch, computed, signal } from '@preact/signals'
import type { Ahead } from '../door/ahead.ts'
import { Died } from '../door/door.ts'
import type { Answer, DefinedFunction, Diagnostic, Edit, EditSet, Files, Reckoning, System, View } from '../door/protocol.ts'
import { readAnswer, Refused } from '../door/read.ts'
import { Reckoner } from '../door/reckoner.ts'
import { isKept } from '../keep/kept.ts'
import { Asked } from './asked.ts'
import { putBeside } from './beside.ts'
import { Editing } from './editing.ts'
import { gather } from './gather.ts'
import type { Notice, OpenSheet, Outside, Unread } from './kinds.ts'
import { Ledger } from './ledger.ts'
import { openingTrouble, refusal, wordsOf } from './refusal.ts'
import type { PageName } from './pages.ts'
import { put } from './put.ts'
import { type Ask, type Round, Rounds } from './queue.ts'
import { fileNameFor, scenarioText } from './scenario.ts'
import { chainOf, type ShelfEntry } from './shelf.ts'

export type { Keeping, Notice, OpenSheet, Outside, Unread } from './kinds.ts'

type Opening = Pick<OpenSheet, 'name' | 'files' | 'shipped' | 'changed'>

const deathsBorne = 2

/** Everything the page knows, as signals, and everything it can be asked to do. */
export class App {
  readonly shelf = signal<readonly ShelfEntry[] | undefined>(undefined)
  /** Whether the last reckoning was stopped, so that what is shown is from before it. */
  readonly stopped = signal(false)
  readonly sheet = signal<OpenSheet | undefined>(undefined)
  readonly reckoning = signal<Reckoning | undefined>(undefined)
  /** How many seasons of the reckoning at work are drawn; undefined when none is. */
  readonly progress = signal<{ done: number; total: number } | undefined>(undefined)
  readonly functions = signal<readonly DefinedFunction[]>([])
  readonly system = signal<System>('as-written')
  readonly notice = signal<Notice | undefined>(undefined)
  readonly unread = signal<Unread | undefined>(undefined)
  /** The page of the open sheet that is looked at. */
  readonly page = signal<PageName>('sheet')
  /** The line whose number is being taken back to where it came from, if any. */
  readonly explaining = signal<string | undefined>(undefined)
  /** Whether a sheet is being opened. */
  readonly opening = signal(false)
  /** What was typed and is not yet in the sheet, by line. */
  readonly asked = new Asked()

  readonly answers = computed<ReadonlyMap<string, Answer>>(
    () => new Map((this.reckoning.value?.lines ?? []).map((answer) => [answer.id, answer])),
  )
  readonly beside = computed(() => {
    const sheet = this.sheet.value
    return sheet === undefined ? undefined : putBeside(sheet.view, sheet.refused, this.reckoning.value)
  })

  /** What was changed since the sheet was opened. */
  readonly editing = new Editing()
  /** What is kept here, and the page's other windows. */
  readonly ledger: Ledger
  readonly #outside: Outside
  readonly #reckoner: Reckoner
  readonly #rounds: Rounds
  #stopping = false
  /** Counts openings, so that what was asked of an earlier sheet is not shown in a later one. */
  #opened = 0
  #deaths = 0

  constructor(outside: Outside) {
    this.#outside = outside
    outside.door.onprogress = (done, total) => (this.progress.value = { done, total })
    this.#reckoner = new Reckoner(outside.door)
    this.#rounds = new Rounds((round) => this.#work(round), outside.soon)
    this.ledger = new Ledger(outside, this)
  }

  /** Fetches the list of shipped sheets and what is kept here. */
  async begin(): Promise<void> {
    const keptHere = this.ledger.recall()
    try {
      this.shelf.value = JSON.parse(await this.#outside.fetchText('scenarios/index.json')) as ShelfEntry[]
    } catch {
      this.shelf.value = []
      this.notice.value = { tone: 'trouble', text: 'The list of shipped sheets could not be fetched.', hint: 'A sheet of your own can still be opened.' }
    }
    await keptHere
  }

  /** Opens a sheet by file name: as it is kept here, or else as it was shipped. */
  async openNamed(name: string): Promise<void> {
    const kept = await this.#outside.keep.get(name).catch(() => undefined)
    this.ledger.standsOn(name, kept !== undefined && isKept(kept) ? kept.version : 0)
    if (kept === undefined) return this.#openShipped(name)
    if (!isKept(kept)) {
      this.notice.value = { tone: 'trouble', text: `“${name}” is kept here in a way this page cannot read.`, hint: 'It is left as it is. It stands at the foot of the list of sheets.' }
      return
    }
    // What it is taken from may have been changed since it was kept, and it follows that.
    const alone = Object.keys(kept.files).length < 2
    const files = alone ? kept.files : { ...kept.files, ...(await this.filesAtHand()), [name]: kept.files[name] ?? '' }
    await this.#open({ name, files, shipped: kept.shipped, changed: true })
  }

  /** Opens a shipped sheet for someone who has never been here, and so has nothing kept that would have to be waited for. */
  async openFirst(name: string): Promise<void> {
    this.ledger.standsOn(name, 0)
    await this.#openShipped(name)
  }

  /**
   * Opens a file the person chose. It is kept at once, so that a reload finds
   * it; under another name where a different sheet is kept under its own.
   */
  async openFile(file: string, text: string): Promise<void> {
    const there = await this.#outside.keep.get(file).catch(() => undefined)
    const same = there !== undefined && isKept(there) && there.files[file] === text
    const name = there === undefined || same ? file : await this.ledger.free(file)
    this.ledger.standsOn(name, same ? there.version : 0)
    const shelf = this.shelf.value ?? []
    // It may be taken from any shipped sheet; one text is small, so all go along.
    const others = await Promise.all(shelf.filter((e) => e.file !== name).map((e) => this.#shippedText(e.file)))
    const files = Object.fromEntries([...others.filter((f) => f !== undefined), [name, text]])
    // A shipped sheet saved and opened again is still that sheet with changes.
    const shipped = shelf.some((e) => e.file === name)
    if (await this.#open({ name, files, shipped, changed: true })) await this.ledger.keep()
  }

  /** Forgets what is kept of a shipped sheet and opens it as shipped. */
  async startAgain(name: string): Promise<void> {
    await this.#outside.keep.forget(name).catch(() => undefined)
    this.ledger.standsOn(name, 0)
    this.ledger.tell({ name, version: 0 })
    await this.ledger.recall()
    await this.#openShipped(name)
  }

  /** Puts the sheet away, back to the list. */
  close(): void {
    this.#opened++
    this.#rounds.drop()
    batch(() => {
      this.sheet.value = undefined
      this.reckoning.value = undefined
      this.unread.value = undefined
      this.opening.value = false
      this.asked.clear()
    })
  }

  /** Changes a line. The sheet is reckoned again as soon as it can be. */
  edit(edit: Edit): void {
    this.asked.ask(edit.about, edit.set)
    this.#rounds.ask(edit)
  }

  /** Makes several changes at once, or none of them. `what` they are about is for the undo. */
  editAll(what: string, edits: readonly Edit[]): void {
    this.#rounds.ask({ about: '', set: {}, edits, what })
  }

  /** Shows what a change would come to without writing it, as a number is dragged. An edit or `letGo` ends it. */
  try(about: string, set: EditSet): void {
    this.editing.drag(this.reckoning.value)
    this.asked.ask(about, set)
    this.#rounds.ask({ about, set, trial: true })
  }

  /** Goes back to what is written. */
  letGo(about: string): void {
    this.editing.letGo()
    this.asked.drop(about)
    this.#rounds.ask({ about, set: {}, trial: true })
  }

  /** Undoes the last change, or does again what was undone last. */
  async step(way: 'back' | 'forth'): Promise<void> {
    await this.idle()
    const text = this.sheet.value && this.editing[way](this.sheet.value.view.source)
    if (text !== undefined) this.#rounds.ask({ about: '', set: {}, text })
  }

  /** Shows results in another system of units. */
  showIn(system: System): void {
    this.system.value = system
    this.editing.before.value = undefined
    if (this.sheet.value !== undefined) this.#rounds.ask()
  }

  /**
   * Asks the reckoner something of the open sheet, once what was typed is in
   * it, to be answered in the units that are shown. Rejects with Refused or Died.
   */
  async ask<T>(method: string, question: object): Promise<T> {
    await this.idle()
    try {
      return readAnswer<T>((await this.#outside.door.call(method, { ...question, system: this.system.value })).json)
    } catch (reason) {
      if (reason instanceof Died && this.#outside.door.dead) await this.#revive(reason.message)
      throw reason
    } finally {
      this.progress.value = undefined
    }
  }

  /** The texts of every sheet there is to set beside the open one, by file name, each as it was last changed. */
  async filesAtHand(): Promise<Files> {
    const shipped = await Promise.all((this.shelf.value ?? []).map((e) => this.#shippedText(e.file)))
    return gather(Object.fromEntries(shipped.filter((f) => f !== undefined)), this.kept.value, this.sheet.value)
  }

  /** Takes a scenario from the open sheet, with nothing changed yet, and opens it. Gives its file name, or undefined when it could not be opened. */
  async takeScenario(title: string): Promise<string | undefined> {
    const sheet = this.sheet.value
    if (sheet === undefined) return undefined
    await this.idle()
    const files = await this.filesAtHand()
    const name = fileNameFor(title, Object.keys(files))
    const text = scenarioText(sheet.name, title)
    if (!(await this.#open({ name, files: { ...files, [name]: text }, shipped: false, changed: true }))) return undefined
    await this.ledger.keep()
    return name
  }

  /** Fetches the list of defined functions, once. */
  async learnFunctions(): Promise<void> {
    if (this.functions.value.length > 0) return
    await this.#reckoner.functions().then(
      (list) => (this.functions.value = list),
      () => undefined,
    )
  }

  /** Starts a reckoner that was given up, and opens the sheet in it again. */
  async tryAgain(): Promise<void> {
    this.#deaths = 0
    this.notice.value = undefined
    await this.#revive('it was asked to')
  }

  /**
   * Stops the reckoning at work. Its worker is ended, since nothing can reach
   * it while it reckons, and the sheet is opened again in another.
   */
  async stop(): Promise<void> {
    if (this.progress.value === undefined) return
    this.#stopping = true
    this.stopped.value = this.#rounds.busy
    this.#outside.door.restart()
    try {
      await this.#reopen()
    } catch (reason) {
      await this.#revive(wordsOf(reason))
    } finally {
      this.#stopping = false
    }
  }

  /** Reckons the sheet as it stands. */
  reckonAgain(): void {
    this.#rounds.ask()
  }

  /** The sheets kept here, the last changed first. */
  get kept(): Ledger['kept'] {
    return this.ledger.kept
  }

  /** Whether the reckoner was given up and waits for `tryAgain`. */
  get givenUp(): boolean {
    return this.#outside.door.dead && this.#deaths > deathsBorne
  }

  /** Fulfilled when nothing that was asked is still to be done. */
  idle(): Promise<void> {
    return this.#rounds.idle()
  }

  async #openShipped(name: string): Promise<void> {
    const chain = chainOf(name, this.shelf.value ?? [])
    const texts = await Promise.all(chain.map((file) => this.#shippedText(file)))
    const files: Files = Object.fromEntries(texts.filter((f) => f !== undefined))
    if (files[name] === undefined) {
      this.notice.value = { tone: 'trouble', text: `There is no sheet “${name}” here.` }
      return
    }
    await this.#open({ name, files, shipped: true, changed: false }, await this.#outside.ahead?.(name, files[name]))
  }

  async #shippedText(file: string): Promise<[string, string] | undefined> {
    return this.#outside.fetchText(`scenarios/${encodeURIComponent(file)}`).then(
      (text): [string, string] => [file, text],
      () => undefined,
    )
  }

  /** Whether the sheet was opened: not when it cannot be read, and not when another was asked for meanwhile. */
  async #open(sheet: Opening, ahead?: Ahead): Promise<boolean> {
    const mine = ++this.#opened
    this.#rounds.drop()
    batch(() => {
      this.notice.value = undefined
      this.unread.value = undefined
      this.opening.value = true
      this.asked.clear()
      this.ledger.elsewhere.value = undefined
      this.stopped.value = false
      if (ahead !== undefined) {
        this.sheet.value = { ...sheet, view: ahead.view, refused: [] }
        this.reckoning.value = ahead.reckoning
      }
    })
    try {
      if (this.#outside.door.dead) this.#outside.door.restart()
      const view = await this.#reckoner.open({ name: sheet.name, files: sheet.files })
      if (mine !== this.#opened) return false
      if (view.kept) {
        this.unread.value = { name: sheet.name, diagnostics: view.diagnostics, shipped: sheet.shipped && sheet.changed }
        return false
      }
      batch(() => {
        this.sheet.value = { ...sheet, view, refused: [] }
        if (ahead === undefined) this.reckoning.value = undefined
        this.editing.clear()
      })
      this.#rounds.ask()
      return true
    } catch (reason) {
      if (mine === this.#opened) this.notice.value = openingTrouble(sheet.name, reason)
      return false
    } finally {
      if (mine === this.#opened) this.opening.value = false
    }
  }

  async #work({ edits }: Round): Promise<void> {
    const mine = this.#opened
    const stale = (): boolean => mine !== this.#opened
    try {
      if (this.#outside.door.dead && !(await this.#reopen())) return
      const refused: Diagnostic[] = []
      for (const edit of edits) {
        const view = await put(this.#reckoner, edit)
        if (stale()) return
        if (view.kept) refused.push(...view.diagnostics)
        else if ('source' in view) this.#taken(view, edit)
      }
      if (edits.length > 0) this.#refuse(refused)
      this.stopped.value = false
      const reckoning = await this.#reckoner.reckon(this.system.value, this.reckoning.value)
      if (stale()) return
      this.#deaths = 0
      batch(() => {
        this.asked.forget(edits)
        this.reckoning.value = reckoning
      })
    } catch (reason) {
      if (stale()) return
      // Stopped on purpose: what stopped it opens the sheet again.
      if (reason instanceof Died && this.#stopping) return
      if (reason instanceof Died) await this.#revive(reason.message)
      else this.notice.value = reason instanceof Refused ? refusal('', reason) : { tone: 'trouble', text: wordsOf(reason) }
    } finally {
      this.progress.value = undefined
      if (!stale()) this.asked.forget(edits)
    }
  }

  #taken(view: View, ask: Ask): void {
    const sheet = this.sheet.value
    if (sheet === undefined) return
    const same = sheet.view.source === view.source
    this.editing.took(ask, sheet.view, view.source, this.reckoning.value, this.#outside.now())
    batch(() => {
      this.notice.value = undefined
      this.sheet.value = { ...sheet, view, changed: sheet.changed || !same, files: { ...sheet.files, [sheet.name]: view.source } }
    })
    if (!same) void this.ledger.keep()
  }

  #refuse(refused: readonly Diagnostic[]): void {
    const sheet = this.sheet.value
    if (sheet !== undefined) this.sheet.value = { ...sheet, refused }
  }

  async #revive(reason: string): Promise<void> {
    this.#deaths++
    if (this.#deaths > deathsBorne) {
      this.notice.value = { tone: 'trouble', text: `The reckoner keeps stopping on this sheet (${reason}).`, hint: 'The sheet is kept as it was. Change it in a file, or try again.' }
      return
    }
    try {
      this.#outside.door.restart()
      if (!(await this.#reopen())) return
      this.notice.value = { tone: 'news', text: `The reckoner stopped (${reason}) and was started again.`, hint: 'The sheet is open as it was before the last change.' }
      this.#rounds.ask()
    } catch (again) {
      if (again instanceof Died) return this.#revive(again.message)
      this.notice.value = { tone: 'trouble', text: wordsOf(again) }
    }
  }

  /** Opens the present sheet in a new reckoner; false when another was opened meanwhile. */
  async #reopen(): Promise<boolean> {
    const sheet = this.sheet.value
    const mine = this.#opened
    if (this.#outside.door.dead) this.#outside.door.restart()
    if (sheet === undefined) return false
    const view = await this.#reckoner.open({ name: sheet.name, files: sheet.files })
    if (mine !== this.#opened) return false
    this.sheet.value = { ...sheet, view }
    return true
  }
}
