import { axisX, barX, type PlotOptions, ruleX, text } from '@observablehq/plot'
import { list } from '../door/answers.ts'
import type { Amount, PricedSize } from '../door/prices.ts'
import { heightOf } from './rows.ts'
import { halo, tones } from './tones.ts'

const syrup = 'the syrup in it'
const left = 'left for the hours'

/** One part of what a size brings, at the likely numbers. */
export interface Part {
  key: string
  size: string
  part: string
  value: number
}

/** The parts of every size's money in the order they are taken: selling, what stands around the syrup, the syrup, what is left. */
export function partsOf(sizes: readonly PricedSize[]): Part[] {
  return sizes.flatMap((size) => {
    const one = (part: string, amount: Amount | null): Part[] => (amount === null || amount.at_likely === null ? [] : [{ key: size.id, size: size.label, part, value: amount.at_likely }])
    return [...one('selling it', size.selling), ...list(size.parts).flatMap((p) => one(p.label.toLowerCase(), p)), ...one(syrup, size.syrup), ...one(left, size.left)]
  })
}

/** The names of the parts in their order, each with its colour; what is left, which is last, has its own. */
export function keyOf(parts: readonly Part[]): { name: string; tone: string }[] {
  const names = [...new Set(parts.map(({ part }) => part))]
  const before = [tones.soft, tones.blank, tones.ink, tones.rule]
  return names.map((name, i) => ({ name, tone: name === left ? tones.spruce : name === syrup ? tones.maple : (before[i % before.length] ?? tones.soft) }))
}

/** A bar for each size, cut into its parts; what is left falls below nothing when a jar costs more than it brings. */
export function jarPicture(sizes: readonly PricedSize[], width: number): PlotOptions {
  const parts = partsOf(sizes)
  const rows = sizes.map(({ id, label }) => ({ key: id, label }))
  const tone = new Map(keyOf(parts).map((key) => [key.name, key.tone]))
  return {
    height: heightOf(rows),
    marginLeft: 4,
    marginRight: 8,
    marginTop: 0,
    x: { label: null, nice: true, insetLeft: 4, insetRight: 4 },
    y: { axis: null, domain: rows.map((row) => row.key), padding: 0 },
    marks: [
      axisX({ anchor: 'bottom', ticks: width < 420 ? 4 : 7 }),
      barX(parts, { x: 'value', y: 'key', insetTop: 22, insetBottom: 8, fill: (part: Part) => tone.get(part.part) ?? tones.soft, stroke: tones.paper, strokeWidth: 1 }),
      ruleX([0], { stroke: tones.ink }),
      text(rows, { y: 'key', text: 'label', frameAnchor: 'left', textAnchor: 'start', dy: -11, fill: tones.ink, ...halo }),
    ],
  }
}
