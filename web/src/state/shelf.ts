/** One shipped sheet as the list beside the page names it. */
export interface ShelfEntry {
  file: string
  title: string
  about: string
  /** The file of the sheet this one is a scenario of. */
  from?: string
}

/** The files that must be at hand to open `file`: itself and, in turn, what each is taken from. Unknown names end the chain. */
export function chainOf(file: string, shelf: readonly ShelfEntry[]): string[] {
  const chain: string[] = []
  let next: string | undefined = file
  while (next !== undefined && !chain.includes(next)) {
    chain.push(next)
    const here: string = next
    next = shelf.find((entry) => entry.file === here)?.from
  }
  return chain
}
