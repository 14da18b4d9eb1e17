import { useState } from 'preact/hooks'
import { list } from '../../door/answers.ts'
import type { PriceCard, ScaledPrices, WagePrices as Answer } from '../../door/prices.ts'
import type { OpenSheet } from '../../state/app.ts'
import { readNumber } from '../../state/numbers.ts'
import { Answered } from './Answered.tsx'
import { DataTable } from './DataTable.tsx'
import { useAsk } from './useAsk.ts'

/** The prices that pay an hour what the person says it should. */
export function WagePrices({ sheet }: { sheet: OpenSheet }) {
  const [typed, setTyped] = useState('')
  const wage = readNumber(typed)
  const asked = useAsk<PriceCard>('price', wage === undefined || wage <= 0 ? undefined : { wage })
  return (
    <section class="wage" aria-labelledby="wage">
      <h3 id="wage">The price that pays an hour</h3>
      <label class="pick">
        <span>An hour should bring, in {sheet.view.money}</span>
        <span class="field">
          <input type="text" inputMode="decimal" autocomplete="off" size={6} value={typed} onInput={(event) => setTyped(event.currentTarget.value)} />
        </span>
      </label>
      {wage !== undefined && wage > 0 && (
        <Answered asked={asked} waiting="The prices are">
          {(card) => card.wage !== null && <Paid wage={card.wage} />}
        </Answered>
      )}
    </section>
  )
}

function Paid({ wage }: { wage: Answer }) {
  const { now, middle, bad } = wage
  const sizes = list(list(middle.all.prices).length > 0 ? middle.all.prices : bad.all.prices)
  const alone = list(middle.each).filter(({ found }) => found)
  return (
    <>
      <p>
        As the sheet stands an hour brings {now.shown.middle} in the middle season, and 8 seasons in 10 between {now.shown.low} and {now.shown.high}. For {wage.shown_wage}:
      </p>
      <ul>
        <li>in the middle season, {inWords(middle.all)};</li>
        <li>in 9 seasons of 10, {inWords(bad.all)}.</li>
      </ul>
      {sizes.length > 0 && (
        <DataTable
          caption={`Prices that pay ${wage.shown_wage}`}
          head={['Size', 'In the middle season', 'In 9 seasons of 10']}
          rows={sizes.map(({ id, label }) => ({ key: id, cells: [label, priceOf(middle.all, id), priceOf(bad.all, id)] }))}
        />
      )}
      {alone.length > 0 && (
        <p>
          One price alone would do it in the middle season:{' '}
          {alone.map(({ prices }) => list(prices).map(({ label, shown }) => `${label.toLowerCase()} at ${shown}`).join(', ')).join('; or ')}.
        </p>
      )}
    </>
  )
}

function inWords({ found, shown }: ScaledPrices): string {
  return found ? `all prices ${shown}` : shown
}

function priceOf(scaled: ScaledPrices, id: string): string {
  return list(scaled.prices).find((price) => price.id === id)?.shown ?? '—'
}
