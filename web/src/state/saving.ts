import { signal } from '@preact/signals'
import type { Kept, Put } from '../keep/kept.ts'

/** What is to be kept of a sheet; its version is known here. */
export type ToKeep = Omit<Kept, 'version'>

/** What is told of each attempt to keep a sheet. */
export interface Told {
  kept(sheet: ToKeep, version: number): void
  /** What is kept under that name is no longer what the change was made to. */
  overtaken(sheet: ToKeep): void
  failed(): void
}

/**
 * Keeps sheets one change after another, so that each is made to the version
 * before it. While one is being kept only the latest that came in meanwhile
 * waits: the ones between are part of it.
 */
export class Saving {
  /** Whether a change is not yet safely kept. */
  readonly unkept = signal(false)
  readonly #put: (kept: Kept) => Promise<Put>
  readonly #told: Told
  readonly #versions = new Map<string, number>()
  #next: ToKeep | undefined
  #working: Promise<void> | undefined

  constructor(put: (kept: Kept) => Promise<Put>, told: Told) {
    this.#put = put
    this.#told = told
  }

  /** The version that a sheet open here stands on; 0 when none is kept. */
  version(name: string): number {
    return this.#versions.get(name) ?? 0
  }

  /** Says which version of a sheet was opened here. */
  standsOn(name: string, version: number): void {
    this.#versions.set(name, version)
  }

  /** Keeps a sheet as soon as the one before it is kept. */
  keep(sheet: ToKeep): Promise<void> {
    this.#next = sheet
    this.unkept.value = true
    this.#working ??= this.#work()
    return this.#working
  }

  async #work(): Promise<void> {
    for (let sheet = this.#take(); sheet !== undefined; sheet = this.#take()) {
      try {
        const version = await this.#put({ ...sheet, version: this.version(sheet.name) })
        if (version === undefined) {
          this.#told.overtaken(this.#takeLater(sheet))
          continue
        }
        this.#versions.set(sheet.name, version)
        this.#told.kept(sheet, version)
      } catch {
        this.#told.failed()
      }
    }
    this.#working = undefined
    this.unkept.value = false
  }

  #take(): ToKeep | undefined {
    const sheet = this.#next
    this.#next = undefined
    return sheet
  }

  /** The latest that is known of a sheet: what waits is a later state of the same one. */
  #takeLater(sheet: ToKeep): ToKeep {
    return this.#next?.name === sheet.name ? (this.#take() ?? sheet) : sheet
  }
}
