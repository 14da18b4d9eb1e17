/** One file of the built page, as the list made at build time names it. */
export interface Listed {
  /** Its name within the page's folder. */
  name: string
  /** The SHA-256 of what is in it, in hex: what came from the host is checked against it. */
  digest: string
  /** What it is asked for with, behind `?v=`: the start of its own digest, or for a packed file of the file it unpacks to. */
  tag: string
}

/** What a build of the page consists of. */
export interface Build {
  /** Differs when any file does. */
  id: string
  files: Listed[]
}

/** The name of a file within the page's folder that a URL asks for, or undefined when it lies outside. The folder itself is its index.html. */
export function nameIn(folder: string, url: string): string | undefined {
  const { origin, pathname } = new URL(url)
  const path = origin + pathname
  if (!path.startsWith(folder)) return undefined
  try {
    return decodeURIComponent(path.slice(folder.length)) || 'index.html'
  } catch {
    return undefined
  }
}

/** What a file is kept under: its name and its tag, so that a later build finds what it shares with an earlier one. */
export function keyOf(folder: string, { name, tag }: Pick<Listed, 'name' | 'tag'>): string {
  return `${folder}${name.split('/').map(encodeURIComponent).join('/')}?kept=${tag}`
}

/** The tag that a URL asks for, or undefined when it takes the file as it is. */
export function tagIn(url: string): string | undefined {
  return new URL(url).searchParams.get('v') ?? undefined
}

/** The name of the cache that a build is kept in. Pages in other folders of the host have their own. */
export function cacheOf(folder: string, id: string): string {
  return `${cachesOf(folder)}${id}`
}

/**
 * The caches to let go when a build takes over, of all there are, oldest
 * first: not its own, and not the one before it, which windows that are still
 * open were fetched from.
 */
export function outlived(folder: string, own: string, all: readonly string[]): string[] {
  const earlier = all.filter((name) => name.startsWith(cachesOf(folder)) && name !== own)
  return earlier.slice(0, -1)
}

/** Whether a file is kept: of a program only the form that this page asks for. */
export function keeps(name: string, packed: boolean, files: readonly Listed[]): boolean {
  if (name.endsWith('.gz')) return packed
  return !packed || !files.some((f) => f.name === `${name}.gz`)
}

const cachesOf = (folder: string): string => `thawbook ${folder} `
