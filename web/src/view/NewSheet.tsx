import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { type Answers, blank, fuels, type Numbered, numbered, untitled, wrongWith } from '../state/questions.ts'
import { shelfAddress } from './address.ts'
import { useShelving } from './context.ts'

/** A few plain questions on one page, and the household's sheet made from the answers. */
export function NewSheet() {
  const shelving = useShelving()
  const [answers, setAnswers] = useState<Answers>(blank)
  const [making, setMaking] = useState(false)
  const [tried, setTried] = useState(false)
  const say = (more: Partial<Answers>): void => setAnswers({ ...answers, ...more })
  const make = async (): Promise<void> => {
    setTried(true)
    const wrong = numbered.find((asked) => wrongWith(asked, answers[asked]) !== undefined)
    if (wrong !== undefined) return document.getElementById(`ask-${wrong}`)?.focus()
    setMaking(true)
    await shelving.make(answers)
    setMaking(false)
  }
  const blankFor = (asked: Numbered, label: string): ComponentChildren => (
    <Blank asked={asked} label={label} text={answers[asked]} checked={tried} onText={(text) => say({ [asked]: text })} />
  )
  return (
    <form
      class="new-sheet"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void make()
      }}
    >
      <h1>A sheet of your own</h1>
      <p class="about">
        Eight questions. Answer as well as you can tonight; everything can be changed afterwards, and a blank left empty
        keeps what the Heron Ridge sheet says.
      </p>
      <ol>
        <Question words="How many taps will you hang?">{blankFor('taps', 'Taps')}</Question>
        <Question words="Into buckets, or on tubing?">
          <Either name="gather" chosen={answers.gather} among={{ buckets: 'buckets', tubing: 'tubing, no pump' }} onChoose={(gather) => say({ gather })} />
        </Question>
        <Question words="How long and how wide is the pan?">
          {blankFor('length', 'Long')}
          {blankFor('width', 'Wide')}
          <Either name="measure" chosen={answers.measure} among={{ ft: 'feet', in: 'inches', cm: 'centimetres' }} onChoose={(measure) => say({ measure })} />
        </Question>
        <Question words="What do you burn under it?">
          <select class="choice" aria-label="What you burn" value={answers.fuel} onChange={(event) => say({ fuel: fuels.find((f) => f.id === event.currentTarget.value)?.id ?? 'pallets' })}>
            {fuels.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </select>
        </Question>
        <Question words="How many whole days are free for the fire in March, and how many evenings?">
          {blankFor('days', 'Days')}
          {blankFor('evenings', 'Evenings')}
        </Question>
        <Question words="What do you fill?">
          <Either name="fill" chosen={answers.fill} among={{ jars: 'mostly jars, quarts and pints', jugs: 'mostly jugs, gallons and halves' }} onChoose={(fill) => say({ fill })} />
        </Question>
        <Question words="What do you ask for a quart, in dollars?">{blankFor('price', 'Price of a quart')}</Question>
        <Question words="What is an hour of yours worth to you, in dollars?">{blankFor('worth', 'Worth of an hour')}</Question>
      </ol>
      <p class="naming">
        <label>
          <span>And what shall the sheet be called?</span>
          <span class="field">
            <input type="text" value={answers.title} placeholder={untitled} onInput={(event) => say({ title: event.currentTarget.value })} />
          </span>
        </label>
      </p>
      <p class="doing">
        <button type="submit" class="stamp" disabled={making}>
          {making ? 'The sheet is being made…' : 'Make the sheet'}
        </button>
        <a href={shelfAddress}>Leave it</a>
      </p>
    </form>
  )
}

function Question({ words, children }: { words: string; children: ComponentChildren }) {
  return (
    <li>
      <fieldset>
        <legend>{words}</legend>
        <div class="answer">{children}</div>
      </fieldset>
    </li>
  )
}

interface BlankProps {
  asked: Numbered
  label: string
  text: string
  /** Whether to say what is wrong even with a blank that was not left yet. */
  checked: boolean
  onText: (text: string) => void
}

function Blank({ asked, label, text, checked, onText }: BlankProps) {
  const [left, setLeft] = useState(false)
  const wrong = left || checked ? wrongWith(asked, text) : undefined
  const id = `ask-${asked}`
  return (
    <span class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        size={8}
        value={text}
        {...(wrong === undefined ? {} : { 'aria-invalid': true, 'aria-describedby': `${id}-wrong` })}
        onInput={(event) => onText(event.currentTarget.value)}
        onBlur={() => setLeft(true)}
      />
      {wrong !== undefined && (
        <span class="senseless" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
    </span>
  )
}

interface EitherProps<T extends string> {
  name: string
  chosen: T
  among: Record<T, string>
  onChoose: (chosen: T) => void
}

function Either<T extends string>({ name, chosen, among, onChoose }: EitherProps<T>) {
  return (
    <span class="either">
      {(Object.keys(among) as T[]).map((each) => (
        <label key={each}>
          <input type="radio" name={name} value={each} checked={chosen === each} onChange={() => onChoose(each)} />
          <span>{among[each]}</span>
        </label>
      ))}
    </span>
  )
}
