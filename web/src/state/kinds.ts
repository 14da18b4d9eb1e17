import type { Ahead } from '../door/ahead.ts'
import type { Door } from '../door/door.ts'
import type { Diagnostic, Files, View } from '../door/protocol.ts'
import type { Kept, Put, Spoilt } from '../keep/kept.ts'
import type { Windows } from '../keep/windows.ts'

/** The sheet on the page. */
export interface OpenSheet {
  name: string
  files: Files
  shipped: boolean
  view: View
  /** Whether it differs from the shipped sheet, or was opened from a file. */
  changed: boolean
  /** What was wrong with the last change, when it was not taken. */
  refused: readonly Diagnostic[]
}

/** A sheet that could not be read, and why. */
export interface Unread {
  name: string
  diagnostics: readonly Diagnostic[]
  /** Whether the shipped sheet of that name may be opened instead. */
  shipped: boolean
}

/** Something to tell the person: news passes, trouble asks for something. */
export interface Notice {
  tone: 'news' | 'trouble'
  text: string
  hint?: string
}

/** What the page keeps sheets in; rejections mean that nothing can be kept. */
export interface Keeping {
  put(kept: Kept): Promise<Put>
  get(name: string): Promise<Kept | Spoilt | undefined>
  forget(name: string): Promise<unknown>
  restore(name: string, value: unknown): Promise<void>
  all(): Promise<(Kept | Spoilt)[]>
}

/** What the page's state needs from the world outside it. */
export interface Outside {
  door: Door
  keep: Keeping
  windows: Windows
  /** The text of a file beside the page, or a rejection. */
  fetchText(path: string): Promise<string>
  /** What a shipped sheet of that text came to when the page was built, if that is known. */
  ahead?(name: string, text: string | undefined): Promise<Ahead | undefined>
  /** Calls back when there is time to work: the next animation frame. */
  soon(begin: () => void): void
  now(): number
}
