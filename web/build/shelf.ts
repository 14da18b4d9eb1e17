import { parse } from 'yaml'
import type { ShelfEntry } from '../src/state/shelf.ts'

/**
 * The list of shipped sheets, from each file's name and text: sheets that
 * stand alone first, each followed by the scenarios taken from it.
 * Throws when a text is not a sheet at all, so that a build never ships one.
 */
export function shelfOf(texts: readonly (readonly [string, string])[]): ShelfEntry[] {
  const entries = texts.map(([file, text]) => entryOf(file, text))
  const under = (file: string): ShelfEntry[] => entries.filter((e) => e.from === file).flatMap((e) => [e, ...under(e.file)])
  const known = new Set(entries.map((e) => e.file))
  return entries.filter((e) => e.from === undefined || !known.has(e.from)).flatMap((e) => [e, ...under(e.file)])
}

function entryOf(file: string, text: string): ShelfEntry {
  const said: unknown = parse(text)
  if (typeof said !== 'object' || said === null || !('thawbook' in said)) throw new Error(`${file} is not a sheet`)
  const word = (key: string): string | undefined => {
    const value: unknown = Object.entries(said).find(([k]) => k === key)?.[1]
    return typeof value === 'string' ? value : undefined
  }
  const from = word('from')
  return { file, title: word('title') ?? file, about: word('about') ?? '', ...(from === undefined ? {} : { from }) }
}
