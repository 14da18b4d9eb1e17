import type { Files } from '../door/protocol.ts'
import type { Kept } from '../keep/kept.ts'

interface Open {
  name: string
  files: Files
  view: { source: string }
}

/**
 * Every sheet's text by file name, each as it was last changed: the open one as
 * it stands, then those kept here, then as shipped. What a kept sheet remembers
 * of the sheet it was taken from counts only where that is known nowhere else.
 */
export function gather(shipped: Files, kept: readonly Pick<Kept, 'name' | 'files'>[], open: Open | undefined): Files {
  const remembered: Files = Object.assign({}, ...kept.map((k) => k.files))
  const own = Object.fromEntries(kept.flatMap((k): [string, string][] => {
    const text = k.files[k.name]
    return text === undefined ? [] : [[k.name, text]]
  }))
  return { ...remembered, ...open?.files, ...shipped, ...own, ...(open === undefined ? {} : { [open.name]: open.view.source }) }
}
