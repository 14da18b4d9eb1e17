import { useMemo } from 'preact/hooks'
import { ladderPicture, stepsOf } from '../../chart/ladder.ts'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import { list } from '../../door/answers.ts'
import type { PriceCard } from '../../door/prices.ts'
import type { OpenSheet } from '../../state/app.ts'
import '../../style/answers.css'
import { Diagnosis } from '../Diagnosis.tsx'
import { Answered } from './Answered.tsx'
import { DataTable } from './DataTable.tsx'
import { JarMoney } from './JarMoney.tsx'
import { OthersPrices } from './OthersPrices.tsx'
import { TryPrices } from './TryPrices.tsx'
import { useAsk } from './useAsk.ts'
import { WagePrices } from './WagePrices.tsx'

/** The price card: what each size costs and leaves, what other prices would do, and the price that pays an hour. */
export function PricesPage({ sheet }: { sheet: OpenSheet }) {
  const asked = useAsk<PriceCard>('price', {})
  return (
    <section class="answer-page prices" aria-labelledby="page-title">
      <h2 id="page-title">Prices</h2>
      <p class="page-lede">What a jar brings, where its money goes, and what another price would do to the season.</p>
      <Answered asked={asked} waiting="The prices are">
        {(card) => (
          <>
            <TryPrices sheet={sheet} card={card} />
            <WagePrices sheet={sheet} />
            <JarMoney card={card} />
            <Ladder card={card} />
            <Outlets card={card} />
            {card.reference !== null && <OthersPrices reference={card.reference} />}
            {list(card.not_counted).length > 0 && (
              <section aria-labelledby="not-counted">
                <h3 id="not-counted">Not counted</h3>
                <ul>
                  {list(card.not_counted).map((said) => (
                    <li key={said}>{said}</li>
                  ))}
                </ul>
              </section>
            )}
          </>
        )}
      </Answered>
    </section>
  )
}

function Ladder({ card }: { card: PriceCard }) {
  const rungs = list(card.ladder)
  const draw = useMemo(() => (width: number) => ladderPicture(rungs, width), [card])
  const steps = stepsOf(rungs)
  if (steps.length < 2) return null
  return (
    <section aria-labelledby="ladder">
      <h3 id="ladder">The ladder: price by volume</h3>
      <p>The largest size stands first. A smaller jar usually asks more by the ounce, for its glass and its filling; one that asks less is marked.</p>
      {list(card.warnings).map((found, i) => (
        <Diagnosis key={i} found={found} />
      ))}
      <PlotFigure label={`Price by volume: ${steps.map(({ label, shown }) => `${label} ${shown}`).join('; ')}. The same numbers stand in the table below.`} draw={draw} />
      <DataTable
        quiet
        caption="Price by volume"
        head={['Size', 'Price by volume', '8 seasons in 10 between', 'Against the largest', 'Asks less than the next larger in']}
        rows={rungs.map(({ id, label, by_volume: { shown }, shown: words }) => ({ key: id, cells: [label, shown.middle, `${shown.low} to ${shown.high}`, `× ${words.against}`, words.falls_in ?? '—'] }))}
      />
    </section>
  )
}

function Outlets({ card }: { card: PriceCard }) {
  const outlets = list(card.outlets)
  if (outlets.length === 0) return null
  return (
    <section aria-labelledby="outlets">
      <h3 id="outlets">Where it is sold</h3>
      <DataTable
        quiet
        caption="Where it is sold"
        head={['Place', 'Share of the price asked', 'Taken', 'Kept behind its fees and costs']}
        rows={outlets.map(({ id, label, level, taken, kept }) => ({
          key: id,
          cells: [label, level.shown.middle, `${taken.shown.middle} (${taken.shown.low} to ${taken.shown.high})`, `${kept.shown.middle} (${kept.shown.low} to ${kept.shown.high})`],
        }))}
      />
    </section>
  )
}
