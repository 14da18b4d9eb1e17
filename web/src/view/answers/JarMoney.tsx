import { list } from '../../door/answers.ts'
import type { Amount, PriceCard, PricedSize } from '../../door/prices.ts'
import { JarMoneyPicture } from './JarMoneyPicture.tsx'
import { DataTable } from './DataTable.tsx'

/** Where the money for one of each size goes, at the likely numbers, where the parts add up. */
export function JarMoney({ card }: { card: PriceCard }) {
  const sizes = list(card.sizes)
  const parts = [...new Map(sizes.flatMap((size) => list(size.parts).map(({ label }): [string, string] => [label, label]))).keys()]
  const said = (amount: Amount | null | undefined): string => amount?.shown.likely ?? '—'
  const part = (size: PricedSize, label: string): string => said(list(size.parts).find((p) => p.label === label))
  return (
    <section aria-labelledby="jar-money">
      <h3 id="jar-money">Where the money for one goes</h3>
      <p>At the likely numbers. What is left pays for the hours. “Brings” is the mean over all that are filled, sold or not.</p>
      <JarMoneyPicture sizes={sizes} />
      <DataTable
        quiet
        caption="Where the money for one goes"
        head={['Size', 'Asked', 'Brings', 'Selling it', ...parts, 'The syrup in it', 'Left', 'Left, seasons between', 'Left for an hour']}
        rows={sizes.map((size) => ({
          key: size.id,
          cells: [
            size.label,
            said(size.price),
            said(size.brings),
            said(size.selling),
            ...parts.map((label) => part(size, label)),
            said(size.syrup),
            <strong>{said(size.left)}</strong>,
            `${size.left.shown.low} to ${size.left.shown.high}`,
            said(size.left_by_hour),
          ],
        }))}
      />
    </section>
  )
}
