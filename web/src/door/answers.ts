import type { Answer, Diagnostic, Named, Shown } from './protocol.ts'

/**
 * What the reckoner answers beyond the reckoning itself, as JSON. Keys are the
 * engine's own. Go writes an empty list as null, so lists that may be empty
 * are read through `list`.
 */

/** A list that may have come as null. */
export type Listed<T> = readonly T[] | null | undefined

/** A list that may have come as null, as a list. */
export function list<T>(given: Listed<T>): readonly T[] {
  return given ?? []
}

type Percentile = 'mean' | 'p05' | 'p10' | 'p50' | 'p90' | 'p95'
type Percentiles = Record<Percentile, number | null>

/** One thing that a scenario says otherwise than the sheet it is set beside. */
export interface SheetChange {
  /** Empty for all that was added or dropped. */
  about: string
  label: string
  was: string
  is: string
}

export interface Scenario {
  title: string
  name: string
  short: string
  changes: Listed<SheetChange>
}

export interface Explained {
  about: string
  label: string
  mean: number | null
  shown: string
}

export interface ShownDifference {
  low: string
  middle: string
  high: string
  mean: string
  ahead?: string
}

export interface ComparedDifference extends Percentiles {
  scenario: number
  ahead: number | null
  explained: Listed<Explained>
  together: Explained
  sentence: string
  explanation: string
  shown: ShownDifference
}

export interface ComparedValue extends Percentiles {
  at_likely: number | null
  shown: Shown
}

export interface ComparedLine {
  id: string
  label: string
  chapter: string
  unit: string
  headline: boolean
  better?: 'more' | 'less' | ''
  values: readonly ComparedValue[]
  difference: readonly ComparedDifference[]
}

export interface Comparison {
  seasons: number
  scenarios: readonly Scenario[]
  lines: Listed<ComparedLine>
  warnings: Listed<Diagnostic>
  paragraph: string
}

export interface FlipPoint {
  value: number
  p10: number | null
  p50: number | null
  p90: number | null
  shown: { value: string; middle: string; ahead: string }
}

export interface Flip {
  about: string
  label: string
  unit: string
  outcome_label: string
  outcome_unit: string
  first: string
  second: string
  low: number
  high: number
  now: number | null
  flips: Listed<{ at: number; shown: string }>
  curve: Listed<FlipPoint>
  sentence: string
  shown: { low: string; high: string; now: string }
}

export interface Share {
  value: number | null
  about_zero: boolean
  shown: string
  shown_error?: string
}

export interface MovingGuess {
  id: string
  label: string
  unit: string
  at_low: number | null
  at_high: number | null
  direction: 'up' | 'down' | ''
  shown: { low: string; high: string; at_low: string; at_high: string }
}

export interface Mover {
  guesses: readonly MovingGuess[]
  label: string
  first: Share
  total: Share
  interacts: boolean
}

export interface Movers {
  seasons: number
  outcome: Answer
  movers: Listed<Mover>
  apart: Listed<Named>
  paragraph: string
}

export interface Worthy {
  value: number
  about_nothing: boolean
  shown: { value: string; error?: string; changes: string }
}

export interface WorthKnowing {
  id: string
  label: string
  unit: string
  note?: string
  worth: Worthy
  turns: Listed<{ at: number; shown: string; below: number; above: number }>
  sentence?: string
}

export interface Worth {
  outcome: Named
  best: number
  all: Worthy
  guesses: Listed<WorthKnowing>
  paragraph: string
}

/** One line of an explanation, with those it was worked from. */
export interface Step {
  id: string
  label: string
  kind: string
  shown: string
  formula?: string
  worked?: string
  conversions?: Listed<{ shown: string }>
  sides?: Listed<{ condition: string; worked: string; holds: boolean; took: string }>
  functions?: Listed<{ name: string; summary: string; source: string }>
  drawn?: string
  note?: string
  source?: string
  row?: { label: string; note?: string; source?: string } | null
  again?: boolean
  more?: boolean
  uses: Listed<Step>
}

export interface Explanation {
  season: number | null
  where: string
  tree: Step
}
