import { axisX, link, type PlotOptions, ruleX, text, tickX } from '@observablehq/plot'
import type { Rung } from '../door/prices.ts'
import { fitted, heightOf, type Row } from './rows.ts'
import { halo, tones } from './tones.ts'

/** One size on the ladder, as far as it has a price by volume. */
export interface Step extends Row {
  low: number
  middle: number
  high: number
  shown: string
  falls: boolean
}

/** The rungs that have a price by volume, in the order given. */
export function stepsOf(ladder: readonly Rung[]): Step[] {
  return ladder.flatMap(({ id, label, by_volume: { p10, p50, p90, shown }, falls }) =>
    p50 === null ? [] : [{ key: id, label, low: p10 ?? p50, middle: p50, high: p90 ?? p50, shown: falls ? `${shown.middle}, lower than the size above` : shown.middle, falls }],
  )
}

/** The price by volume of each size, the largest size at the top: it should rise down the page. A size that is cheaper than the one above it is marked. */
export function ladderPicture(ladder: readonly Rung[], width: number): PlotOptions {
  const steps = stepsOf(ladder)
  return {
    height: heightOf(steps),
    marginLeft: 8,
    marginRight: 10,
    marginTop: 0,
    x: { label: null, zero: true, nice: true },
    y: { axis: null, domain: steps.map((step) => step.key), padding: 0, type: 'band' },
    marks: [
      axisX({ anchor: 'bottom', ticks: width < 420 ? 4 : 7 }),
      ruleX([0], { stroke: tones.ink }),
      link(steps, { x1: 0, x2: 'middle', y1: 'key', y2: 'key', stroke: tones.rule, strokeWidth: 2 }),
      link(steps, { x1: 'low', x2: 'high', y1: 'key', y2: 'key', stroke: tones.spruce, strokeWidth: 5 }),
      tickX(steps, { x: 'middle', y: 'key', insetTop: 14, insetBottom: 14, stroke: tones.maple, strokeWidth: 2.5 }),
      text(steps, { y: 'key', text: (step: Step) => fitted(step.label, width * 0.5), frameAnchor: 'left', textAnchor: 'start', dy: -13, dx: 3, fill: tones.ink, ...halo }),
      text(steps, { y: 'key', text: (step: Step) => fitted(step.shown, width * 0.55), frameAnchor: 'right', textAnchor: 'end', dy: -13, fill: (step: Step) => (step.falls ? tones.maple : tones.soft), ...halo }),
    ],
  }
}
