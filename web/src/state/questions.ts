import type { Edit, EditSet } from '../door/protocol.ts'
import { readNumber } from './numbers.ts'

/** What a new sheet is made from: the finished household example, with the person's own answers in it. */
export const madeFrom = 'heron-ridge-pallets.yaml'

/** The fuels that the example has a row for, in its own words. */
export const fuels = [
  { id: 'pallets', label: 'Old hardwood pallets' },
  { id: 'cordwood', label: 'Cordwood off our own land' },
  { id: 'bought_wood', label: 'Cordwood, split and delivered' },
  { id: 'propane', label: 'Propane by the gallon' },
] as const

/** The questions that are answered with a number; a blank leaves what the example says. */
export const numbered = ['taps', 'length', 'width', 'days', 'evenings', 'price', 'worth'] as const

export type Numbered = (typeof numbered)[number]

/** Answers as they stand in the form. */
export interface Answers extends Record<Numbered, string> {
  title: string
  gather: 'buckets' | 'tubing'
  measure: 'ft' | 'in' | 'cm'
  fuel: (typeof fuels)[number]['id']
  fill: 'jars' | 'jugs'
}

export const blank: Answers = {
  title: '', taps: '', gather: 'buckets', length: '', width: '', measure: 'ft', fuel: 'pallets', days: '', evenings: '', fill: 'jars', price: '', worth: '',
}

/** A change of a sheet's text, with the keys that the questions set. */
export interface FullEdit extends Edit {
  set: EditSet & { title?: string; about?: string; label?: string; note?: string; source?: string; unit?: string }
  remove?: boolean
}

/** What is wrong with an answer, or undefined when it can be used. */
export function wrongWith(asked: Numbered, text: string): string | undefined {
  if (text.trim() === '') return undefined
  const value = readNumber(text)
  if (value === undefined) return 'wants a number'
  if (value < 0) return 'cannot be less than nothing'
  if (value === 0 && (asked === 'taps' || asked === 'length' || asked === 'width' || asked === 'price')) return 'wants more than nothing'
  return undefined
}

/** The sheet's title when none was given. */
export const untitled = 'Our own season'

/** The changes that make the example into the sheet of whoever answered. */
export function editsFor(answers: Answers): FullEdit[] {
  const number = (asked: Numbered): number | undefined => readNumber(answers[asked])
  const set = (about: string, value: number | undefined, more: FullEdit['set'] = {}): FullEdit[] =>
    value === undefined ? [] : [{ about, set: { is: value, source: 'our own answer', ...more } }]
  const measured = { unit: answers.measure }
  return [
    { about: '', set: { title: answers.title.trim() || untitled, about: aboutFor(answers) } },
    ...set('taps', number('taps'), { note: '' }),
    ...(number('taps') === undefined ? [] : trees),
    ...(answers.gather === 'tubing' ? tubing : []),
    ...set('pan_length', number('length'), measured),
    ...set('pan_width', number('width'), measured),
    { about: 'fuel', set: { choose: answers.fuel } },
    ...set('weekend_days', number('days'), { label: 'Free days at the fire', note: 'Put a low, a likely and a high in its place when you know them.' }),
    ...set('evenings', number('evenings'), { note: '' }),
    ...(answers.fill === 'jugs' ? jugs : []),
    ...set('jars.quart.price', number('price')),
    ...(number('price') === undefined ? [] : prices),
    ...set('worth', number('worth')),
  ]
}

/** The example's text with a head of its own, in place of what its household wrote above it. */
export function withOwnHead(text: string): string {
  return `${head}\n${text.slice(Math.max(0, text.search(/^thawbook:/m)))}`
}

const head = `# Made from a few answers, and from the Heron Ridge sheet for all that was not
# asked. Go through it line by line and put your own numbers in.
#
# How to guess: low is the season that only one year in ten falls below, high
# the one that only one year in ten goes above, likely the middle.
`

function aboutFor({ taps, gather, length, width, measure, fuel }: Answers): string {
  const trees = taps.trim() === '' ? 'A first plan' : `${taps.trim()} taps`
  const pan = length.trim() === '' || width.trim() === '' ? 'the pan' : `a ${width.trim()} by ${length.trim()} ${measure} pan`
  const burnt = fuels.find((f) => f.id === fuel)?.label.toLowerCase() ?? fuel
  return `${trees} on ${gather}, ${pan}, ${burnt}. What was not asked stands as at Heron Ridge.`
}

/** Nobody was asked to walk the grove, so its table must not say what Heron Ridge counted. */
const trees: FullEdit[] = [
  { about: 'trunks.thin.trees', set: { is: 0, source: 'not counted yet' } },
  { about: 'trunks.middling.trees', set: { formula: 'taps * of(1, "tree/tap")', source: 'not counted yet: one tree to a tap' } },
  { about: 'trunks.big.trees', set: { is: 0, source: 'not counted yet' } },
]

const tubing: FullEdit[] = [
  { about: 'sap_per_tap', set: { note: 'Tubing without a pump, taken to give what buckets do. With a pump it gives more: put your own.', source: 'common practice, no source' } },
  { about: 'tasks.ready', set: { label: 'Rinse and string the lines' } },
  { about: 'tasks.hang', set: { label: 'Drill and tap' } },
  { about: 'tasks.gather', set: { label: 'Walk and mend the lines', note: 'With tapping and pulling it comes near the 9.6 min a tap and season that USDA found in 1975.', source: 'our own guess' } },
  { about: 'tasks.gather.times', set: { formula: 'number(taps, "tap")' } },
  { about: 'tasks.gather.takes', set: { guess: { low: 0.02, likely: 0.04, high: 0.08 } } },
  { about: 'gather_rounds', set: {}, remove: true },
  { about: 'tasks.pull', set: { label: 'Pull taps and rinse the lines' } },
  { about: 'gear.buckets', set: { label: 'Tubing and fittings' } },
  { about: 'bucket_price', set: { label: 'Tubing and fittings', guess: { low: 4, likely: 7, high: 12 } } },
  { about: 'gear.carrying', set: { label: 'Tank at the foot of the lines' } },
]

const jugs: FullEdit[] = [
  { about: 'jars.gallon.share', set: { is: 25 } },
  { about: 'jars.half_gallon.share', set: { is: 30 } },
  { about: 'jars.pint.share', set: { is: 15 } },
  { about: 'jars.half_pint.share', set: { is: 5 } },
  { about: 'get_quarts', set: { label: 'Quart jugs' } },
  { about: 'get_pints', set: { label: 'Pint jugs' } },
  { about: 'get_half_pints', set: { label: 'Half-pint jugs' } },
]

/** One price was asked; the others stand to it as they did where prices were counted by size. */
const prices: FullEdit[] = [
  ['gallon', '47.7'], ['half_gallon', '27.4'], ['pint', '9.8'], ['half_pint', '6.2'],
].flatMap(([size, counted]): FullEdit[] => [
  { about: `jars.${size}.price`, set: { formula: `jars.quart.price * ${counted} / 16.5` } },
  { about: `jars.${size}`, set: { source: 'follows the quart, as USDA NASS retail prices by size did in 2016 and 2017' } },
])
