import { list } from '../../door/answers.ts'
import type { PriceReference } from '../../door/prices.ts'
import { DataTable } from './DataTable.tsx'

/** What others got for such sizes in the last year surveyed: for reference, never as advice. */
export function OthersPrices({ reference }: { reference: PriceReference }) {
  const sizes = list(reference.sizes).filter(({ retail, wholesale }) => retail !== null || wholesale !== null)
  if (sizes.length === 0) return null
  return (
    <section aria-labelledby="others-prices">
      <h3 id="others-prices">What others got in {reference.year}</h3>
      <p>{reference.note}</p>
      <DataTable
        quiet
        caption={`What others got in ${reference.year}, in US dollars`}
        head={['Size', 'Container', 'Retail, middle state', 'Retail, states between', 'Wholesale, middle state']}
        rows={sizes.map(({ id, label, container, retail, wholesale }) => ({
          key: id,
          cells: [label, container ?? '—', retail?.shown_median ?? '—', retail?.shown_range ?? '—', wholesale?.shown_median ?? '—'],
        }))}
      />
      <cite class="line-source">{reference.source}</cite>
    </section>
  )
}
