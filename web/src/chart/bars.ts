import { axisX, barX, type PlotOptions, ruleX, text } from '@observablehq/plot'
import { fitted, heightOf, type Row } from './rows.ts'
import { halo, tones } from './tones.ts'

export interface Bar extends Row {
  value: number
  /** The value as it is read. */
  shown: string
  /** Whether it is the sum of the others, and drawn apart from them. */
  whole?: boolean
}

/** A bar from nothing for each row, its label above it and its number at the row's end. */
export function barsPicture(bars: readonly Bar[], width: number): PlotOptions {
  return {
    height: heightOf(bars),
    marginLeft: 4,
    marginRight: 8,
    marginTop: 0,
    x: { label: null, nice: true, insetLeft: 4, insetRight: 4 },
    y: { axis: null, domain: bars.map((bar) => bar.key), padding: 0 },
    marks: [
      axisX({ anchor: 'bottom', ticks: width < 420 ? 4 : 7 }),
      barX([...bars], { x1: 0, x2: 'value', y: 'key', insetTop: 22, insetBottom: 8, fill: (bar: Bar) => (bar.whole ? tones.soft : tones.spruce) }),
      ruleX([0], { stroke: tones.ink }),
      text([...bars], { y: 'key', text: (bar: Bar) => fitted(bar.label, width * 0.68), frameAnchor: 'left', textAnchor: 'start', dy: -11, fill: tones.ink, ...halo }),
      text([...bars], { y: 'key', text: 'shown', frameAnchor: 'right', textAnchor: 'end', dy: -11, fill: tones.soft, ...halo }),
    ],
  }
}
