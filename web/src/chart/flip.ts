import { areaY, lineY, type PlotOptions, ruleX, ruleY, text } from '@observablehq/plot'
import { type Flip, type FlipPoint, list } from '../door/answers.ts'
import { tones } from './tones.ts'

/** The points of a flip's curve that have a whole band: elsewhere no season comes to a number. */
export function bandOf(flip: Flip): (FlipPoint & { p10: number; p50: number; p90: number })[] {
  return list(flip.curve).filter((point): point is FlipPoint & { p10: number; p50: number; p90: number } => point.p10 !== null && point.p50 !== null && point.p90 !== null)
}

/** Where the number stands in the sheet, when that is in the picture. */
export function presentIn({ now, low, high }: Flip): { at: number; shown: string }[] {
  return now !== null && now >= low && now <= high ? [{ at: now, shown: 'now' }] : []
}

/** How the difference between two scenarios hangs on one number: the middle as a line, 8 seasons of 10 as a band, a mark where it turns. */
export function flipPicture(flip: Flip, width: number): PlotOptions {
  const band = bandOf(flip)
  const turns = [...list(flip.flips)]
  const now = presentIn(flip)
  return {
    height: width < 420 ? 260 : 320,
    marginTop: 40,
    marginBottom: 42,
    marginLeft: 62,
    x: { label: null, ticks: width < 420 ? 4 : 7, nice: false },
    y: { label: null, grid: true, ticks: 6 },
    marks: [
      areaY(band, { x: 'value', y1: 'p10', y2: 'p90', fill: tones.spruce, fillOpacity: 0.22 }),
      ruleY([0], { stroke: tones.ink }),
      lineY(band, { x: 'value', y: 'p50', stroke: tones.spruce, strokeWidth: 2.5 }),
      ruleX(now, { x: 'at', stroke: tones.soft, strokeDasharray: '2 3' }),
      text(now, { x: 'at', text: 'shown', frameAnchor: 'bottom', dy: -6, dx: 4, textAnchor: 'start', fill: tones.soft }),
      ruleX(turns, { x: 'at', stroke: tones.maple, strokeWidth: 1.5 }),
      text(turns, { x: 'at', text: 'shown', frameAnchor: 'top', dy: -10, fill: tones.maple, fontWeight: 600 }),
    ],
  }
}
