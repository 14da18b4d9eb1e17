import { useMemo, useState } from 'preact/hooks'
import { list } from '../../door/answers.ts'
import type { PriceCard, PriceChange } from '../../door/prices.ts'
import type { OpenSheet } from '../../state/app.ts'
import { readNumber } from '../../state/numbers.ts'
import { editsOf, type Try, triesOf } from '../../state/tries.ts'
import { useApp } from '../context.ts'
import { Diagnosis } from '../Diagnosis.tsx'
import { Answered } from './Answered.tsx'
import { DataTable } from './DataTable.tsx'
import { useAsk } from './useAsk.ts'

interface Props {
  sheet: OpenSheet
  card: PriceCard
}

/** Sliders for every price and for the mix of sizes. What they do is tried aside; the sheet keeps its own until it is told to take them. */
export function TryPrices({ sheet, card }: Props) {
  const app = useApp()
  const tries = useMemo(() => triesOf(card, sheet.view), [card, sheet.view])
  const [tried, setTried] = useState<ReadonlyMap<string, number>>(new Map())
  const changes = editsOf(tries, tried)
  const asked = useAsk<PriceCard>('price', changes.length === 0 ? undefined : { changes })
  const move = (about: string, value: number): void => setTried(new Map(tried).set(about, value))
  const group = (what: Try['what'], legend: string) => {
    const ones = tries.filter((one) => one.what === what)
    return ones.length === 0 ? null : (
      <fieldset class="sliders">
        <legend>{legend}</legend>
        {ones.map((one) => (
          <Slider key={one.about} one={one} value={tried.get(one.about) ?? one.now} onValue={(value) => move(one.about, value)} />
        ))}
      </fieldset>
    )
  }
  return (
    <section class="try-prices" aria-labelledby="try-prices">
      <h3 id="try-prices">Try other prices</h3>
      <div class="slider-groups">
        {group('price', 'What we ask')}
        {group('share', 'How much goes into each size')}
      </div>
      {card.sales_note && <p class="hint">{card.sales_note}</p>}
      {changes.length === 0 ? (
        <p class="nothing-tried">Move one, and what it does to the season stands here.</p>
      ) : (
        <>
          <Answered asked={asked} waiting="The season is">
            {({ change }) => change !== null && <Outcomes change={change} />}
          </Answered>
          <p class="try-doings">
            <button
              type="button"
              onClick={() => {
                for (const edit of changes) app.edit(edit)
                setTried(new Map())
              }}
            >
              Put these in the sheet
            </button>
            <button type="button" onClick={() => setTried(new Map())}>
              Back to the sheet’s own
            </button>
          </p>
        </>
      )}
    </section>
  )
}

interface SliderProps {
  one: Try
  value: number
  onValue: (value: number) => void
}

function Slider({ one: { label, what, unit, slide }, value, onValue }: SliderProps) {
  const take = (text: string): void => {
    const number = readNumber(text)
    if (number !== undefined && number >= 0) onValue(number)
  }
  const called = `${label}, ${what}`
  return (
    <div class="slider">
      <span class="slider-label" aria-hidden="true">{label}</span>
      <input
        type="range"
        aria-label={called}
        aria-valuetext={`${value} ${unit}`}
        min={slide.low}
        max={slide.high}
        step={slide.step}
        value={value}
        onInput={(event) => take(event.currentTarget.value)}
      />
      <span class="field">
        <input type="text" inputMode="decimal" autocomplete="off" size={6} aria-label={`${called}, in ${unit}`} value={String(value)} onChange={(event) => take(event.currentTarget.value)} />
      </span>
      <span class="slider-unit">{unit}</span>
    </div>
  )
}

function Outcomes({ change }: { change: PriceChange }) {
  return (
    <>
      {list(change.warnings).map((found, i) => (
        <Diagnosis key={i} found={found} />
      ))}
      <DataTable
        caption="What it does to the season"
        head={['Outcome', 'As the sheet stands', 'So', 'Difference', 'More in']}
        rows={list(change.outcomes).map(({ id, label, before, after, difference, shown_more }, i) => ({
          key: id || String(i),
          cells: [
            label,
            before.shown.middle,
            <strong>{after.shown.middle}</strong>,
            difference.shown.low === difference.shown.high ? difference.shown.middle : `${difference.shown.middle} (${difference.shown.low} to ${difference.shown.high})`,
            shown_more,
          ],
        }))}
      />
    </>
  )
}
