import type { Kept } from '../keep/kept.ts'
import type { ShelfEntry } from './shelf.ts'

/** A sheet that may be set beside another. */
export interface Relative {
  name: string
  title: string
  /** The sheet it is taken from. */
  from?: string
}

interface Open {
  name: string
  view: { title: string; from?: string }
}

/**
 * The sheets of one family with the open one: what it is taken from, what is
 * taken from it, and so on, in the order known. The open one is not among
 * them. Two families share no lines, so there is nothing to set side by side.
 */
export function familyOf(open: Open, shelf: readonly ShelfEntry[], kept: readonly Pick<Kept, 'name' | 'title' | 'files'>[]): Relative[] {
  const known = new Map<string, Relative>()
  for (const { file, title, from } of shelf) known.set(file, { name: file, title, ...(from === undefined ? {} : { from }) })
  for (const { name, title, files } of kept) known.set(name, { name, title, ...fromOf(files[name] ?? '') })
  known.set(open.name, { name: open.name, title: open.view.title, ...(open.view.from ? { from: open.view.from } : {}) })
  const root = rootOf(open.name, known)
  return [...known.values()].filter(({ name }) => name !== open.name && rootOf(name, known) === root)
}

/** Which of a family to set beside the open sheet at first: what it is taken from, or else the first that is taken from it. */
export function firstBeside(open: Open, family: readonly Relative[]): string[] {
  const first = family.find(({ name }) => name === open.view.from) ?? family.find(({ from }) => from === open.name)
  return first === undefined ? [] : [first.name]
}

/** What a sheet's text says it is taken from: the key stands at the margin, its value plain or in quotes. */
function fromOf(text: string): { from?: string } {
  const said = /^from:[ \t]*(?:"((?:[^"\\]|\\.)*)"|'((?:[^']|'')*)'|([^\s#][^#\n]*))/m.exec(text)
  const from = (said?.[1]?.replaceAll(/\\(.)/g, '$1') ?? said?.[2]?.replaceAll("''", "'") ?? said?.[3] ?? '').trim()
  return from === '' ? {} : { from }
}

function rootOf(name: string, known: ReadonlyMap<string, Relative>): string {
  const seen = new Set<string>()
  let here = name
  while (!seen.has(here)) {
    seen.add(here)
    const from = known.get(here)?.from
    if (from === undefined) return here
    here = from
  }
  return here
}
