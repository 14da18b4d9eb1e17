import type { Listed } from './answers.ts'
import type { Diagnostic } from './protocol.ts'

/** The price card and the list of what to lay in, as the reckoner's JSON has them. */

export interface Amount {
  unit: string
  at_likely: number | null
  p10: number | null
  p50: number | null
  p90: number | null
  shown: { likely: string; mean: string; low: string; middle: string; high: string }
}

export interface NamedAmount extends Amount {
  id: string
  label: string
}

export interface PricedSize {
  id: string
  label: string
  /** The cell or line that holds its price. */
  price_id: string
  size: Amount
  filled: Amount
  price: Amount
  brings: Amount
  selling: Amount | null
  parts: Listed<NamedAmount>
  syrup: Amount | null
  left: Amount
  left_by_hour: Amount | null
}

export interface Rung {
  id: string
  label: string
  by_volume: Amount
  falls: boolean
  shown: { against: string; falls_in?: string }
}

export interface PricedOutlet {
  id: string
  label: string
  level: Amount
  taken: Amount
  kept: Amount
}

export interface ChangedOutcome {
  id: string
  label: string
  before: Amount
  after: Amount
  difference: Amount
  shown_more: string
}

export interface PriceChange {
  lines: Listed<{ id: string; label: string; was: string; is: string }>
  outcomes: Listed<ChangedOutcome>
  warnings: Listed<Diagnostic>
}

export interface ScaledPrices {
  id: string
  found: boolean
  shown: string
  prices: Listed<{ id: string; label: string; price: number; shown: string }>
}

export interface WageAnswer {
  all: ScaledPrices
  each: Listed<ScaledPrices>
}

export interface WagePrices {
  wage: number
  shown_wage: string
  now: NamedAmount
  middle: WageAnswer
  bad: WageAnswer
}

interface ReferenceSpread {
  states: number
  shown_median: string
  shown_range: string
}

export interface ReferenceSize {
  id: string
  label: string
  container?: string
  retail: ReferenceSpread | null
  wholesale: ReferenceSpread | null
}

export interface PriceReference {
  source: string
  year: number
  note: string
  sizes: Listed<ReferenceSize>
}

export interface PriceCard {
  money: string
  table: string
  label: string
  sizes: Listed<PricedSize>
  ladder: Listed<Rung>
  season: Listed<NamedAmount>
  outlets: Listed<PricedOutlet>
  sales_note: string
  change: PriceChange | null
  wage: WagePrices | null
  reference: PriceReference | null
  not_counted: Listed<string>
  warnings: Listed<Diagnostic>
}

export interface LayInItem {
  id: string
  label: string
  note?: string
  need: number | null
  middle: number | null
  on_hand: number
  buy: number | null
  cost: { shown: string; range?: string } | null
  shown: { need: string; middle: string; on_hand: string; buy: string; packs?: string; short_now: string; short_then: string; price?: string }
}

export interface LayInList {
  title: string
  chance: number
  chance_shown: string
  groups: Listed<{ chapter: string; items: Listed<LayInItem> }>
  total: { shown: string; range?: string } | null
  unpriced: number
  shown: { all_last: string; all_now: string }
  warnings: Listed<Diagnostic>
  paragraph: string
}
