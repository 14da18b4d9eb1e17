import type { Edit, LineView, View } from '../door/protocol.ts'
import type { PriceCard } from '../door/prices.ts'

/** Something that can be tried on the price card: one size's price or its share of the syrup. */
export interface Try {
  /** The cell or line it would change. */
  about: string
  label: string
  what: 'price' | 'share'
  unit: string
  /** What the sheet says; of a guess, the likely. */
  now: number
  slide: Slide
}

/** How far a slider goes and by what steps. */
export interface Slide {
  low: number
  high: number
  step: number
}

/** What can be tried on a card: every price, and every share that the sheet sets down itself rather than works out. */
export function triesOf(card: PriceCard, view: View): Try[] {
  const cells = cellsOf(view)
  const sizes = card.sizes ?? []
  const found = (about: string, label: string, what: Try['what']): Try[] => {
    const cell = cells.get(about)
    const now = cell?.is ?? cell?.guess?.likely
    if (cell === undefined || now === undefined) return []
    return [{ about, label, what, unit: cell.unit, now, slide: what === 'share' ? slideOfShare(cell) : slideOfPrice(now) }]
  }
  return [
    ...sizes.flatMap((size) => found(size.price_id, size.label, 'price')),
    ...(card.table === '' ? [] : sizes.flatMap((size) => found(`${card.table}.${size.id}.share`, size.label, 'share'))),
  ]
}

/** The edits that make what is tried so; a number that is where the sheet has it changes nothing. */
export function editsOf(tries: readonly Try[], tried: ReadonlyMap<string, number>): Edit[] {
  return tries.flatMap(({ about, now }) => {
    const is = tried.get(about)
    return is === undefined || is === now ? [] : [{ about, set: { is } }]
  })
}

/** From half a price to twice it, by steps a price tag would have. */
export function slideOfPrice(now: number): Slide {
  const step = now < 5 ? 0.05 : now < 20 ? 0.25 : now < 50 ? 0.5 : 1
  const whole = (value: number): number => Math.round(value / step) * step
  return { low: whole(now / 2), high: Math.max(whole(now * 2), step), step }
}

function slideOfShare({ unit }: LineView): Slide {
  return unit === '%' ? { low: 0, high: 100, step: 1 } : { low: 0, high: 1, step: 0.01 }
}

function cellsOf(view: View): Map<string, LineView> {
  const all = view.chapters.flatMap((chapter) => [...chapter.lines, ...chapter.tables.flatMap((table) => table.rows.flatMap((row) => row.cells))])
  return new Map(all.map((line) => [line.id, line]))
}
