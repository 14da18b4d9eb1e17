import { axisX, barX, type PlotOptions, ruleX, text } from '@observablehq/plot'
import { list, type Movers, type MovingGuess } from '../door/answers.ts'
import { fitted, heightOf, type Row } from './rows.ts'
import { halo, tones } from './tones.ts'

/** How far an outcome swings as one guess goes from its low to its high. */
export interface Swing extends Row {
  atLow: number
  atHigh: number
  /** The guess's own low and high, on the side where they put the outcome. */
  left: string
  right: string
}

/** The swings of a movers answer in its order, the first so many; guesses without numbers at both ends have none. */
export function swingsOf(movers: Movers, most: number): Swing[] {
  return list(movers.movers)
    .flatMap((mover) => mover.guesses)
    .flatMap((guess) => (guess.at_low === null || guess.at_high === null ? [] : [swingOf(guess, guess.at_low, guess.at_high)]))
    .slice(0, most)
}

function swingOf({ id, label, shown }: MovingGuess, atLow: number, atHigh: number): Swing {
  const rising = atHigh >= atLow
  return { key: id, label, atLow, atHigh, left: rising ? shown.low : shown.high, right: rising ? shown.high : shown.low }
}

/** A bar for each guess from what its low to what its high makes of the outcome; the upright line is the outcome at the likely numbers. */
export function swingsPicture(movers: Movers, most: number, width: number): PlotOptions {
  const swings = swingsOf(movers, most)
  const { at_likely: likely } = movers.outcome
  const ends = { y: 'key', dy: 7, fill: tones.soft, ...halo } as const
  return {
    height: heightOf(swings),
    marginLeft: 4,
    marginRight: 8,
    marginTop: 0,
    // Room at the sides for the numbers at the bars' ends.
    x: { label: null, nice: true, insetLeft: 74, insetRight: 74 },
    y: { axis: null, domain: swings.map((swing) => swing.key), padding: 0 },
    marks: [
      axisX({ anchor: 'bottom', ticks: width < 420 ? 3 : 6 }),
      ...(likely === null ? [] : [ruleX([likely], { stroke: tones.ink })]),
      barX(swings, { x1: 'atLow', x2: 'atHigh', y: 'key', insetTop: 22, insetBottom: 8, fill: tones.spruce }),
      text(swings, { y: 'key', text: (swing: Swing) => fitted(swing.label, width - 20), frameAnchor: 'left', textAnchor: 'start', dy: -11, fill: tones.ink, ...halo }),
      text(swings, { ...ends, x: (s: Swing) => Math.min(s.atLow, s.atHigh), text: 'left', textAnchor: 'end', dx: -5 }),
      text(swings, { ...ends, x: (s: Swing) => Math.max(s.atLow, s.atHigh), text: 'right', textAnchor: 'start', dx: 5 }),
    ],
  }
}
