import type { Kept } from '../keep/kept.ts'
import type { ShelfEntry } from '../state/shelf.ts'
import { addressOf, newAddress } from './address.ts'
import { useApp, useShelving } from './context.ts'
import { Grove } from './Grove.tsx'
import { changedAt, OwnSheets, SpoiltSheets } from './OwnSheets.tsx'

/** The list of sheets: those shipped with the page, and those changed or opened here before. */
export function Shelf() {
  const app = useApp()
  const shelf = app.shelf.value
  const kept = app.kept.value
  const own = kept.filter((k) => !k.shipped)
  return (
    <div class="shelf">
      <div class="lede">
        <Grove />
        <h1>What will next season cost, take and leave?</h1>
        <p>
          Set down your trees, your pan, your fire and your jars. Where you do not know a number, say how low and how
          high it may run. The sheet then lives through thousands of seasons and shows what falls where: never one
          false number, always a range.
        </p>
        <p class="begin">
          <a class="stamp" href={newAddress}>
            Make a sheet of your own
          </a>
        </p>
      </div>
      {own.length > 0 && (
        <section aria-labelledby="own-sheets">
          <h2 id="own-sheets">Your own sheets</h2>
          <OwnSheets own={own} />
        </section>
      )}
      <section aria-labelledby="shipped-sheets">
        <h2 id="shipped-sheets">Sheets to start from</h2>
        {shelf === undefined ? <p>The list is on its way…</p> : <ShippedList shelf={shelf} kept={kept} />}
      </section>
      {app.ledger.spoilt.value.length > 0 && <SpoiltSheets spoilt={app.ledger.spoilt.value} />}
    </div>
  )
}

function ShippedList({ shelf, kept }: { shelf: readonly ShelfEntry[]; kept: readonly Kept[] }) {
  const shelving = useShelving()
  return (
    <ul class="sheets">
      {shelf.map((entry) => {
        const changed = kept.find((k) => k.shipped && k.name === entry.file)
        const base = shelf.find((e) => e.file === entry.from)
        return (
          <li key={entry.file} class={base === undefined ? '' : 'taken'}>
            <a href={addressOf(entry.file)}>{entry.title}</a>
            {base !== undefined && <p class="taken-from">The same season as “{base.title}”, with changes.</p>}
            <p>{entry.about}</p>
            {changed !== undefined && <p class="changed">With your changes, {changedAt(changed)}.</p>}
            <p class="sheet-doings">
              <button type="button" onClick={() => void shelving.copyShipped(entry)} aria-label={`Copy ${entry.title}`}>
                Copy
              </button>
              {changed !== undefined && (
                <button type="button" onClick={() => void shelving.take(entry.file, `${entry.title}, with your changes`)} aria-label={`Put the changes away: ${entry.title}`}>
                  Put the changes away
                </button>
              )}
            </p>
          </li>
        )
      })}
    </ul>
  )
}
