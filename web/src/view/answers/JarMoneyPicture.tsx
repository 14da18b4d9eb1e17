import { useMemo } from 'preact/hooks'
import { jarPicture, keyOf, partsOf } from '../../chart/jar.ts'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import type { PricedSize } from '../../door/prices.ts'

/** A bar for each size cut into the parts its money goes to, and the key to them. */
export function JarMoneyPicture({ sizes }: { sizes: readonly PricedSize[] }) {
  const draw = useMemo(() => (width: number) => jarPicture(sizes, width), [sizes])
  const parts = partsOf(sizes)
  if (parts.length === 0) return null
  return (
    <>
      <ul class="part-key" aria-hidden="true">
        {keyOf(parts).map(({ name, tone }) => (
          <li key={name}>
            <svg width={14} height={14}>
              <rect width={14} height={14} fill={tone} />
            </svg>
            {name}
          </li>
        ))}
      </ul>
      <PlotFigure label="Where the money for one of each size goes. The same numbers stand in the table below." draw={draw} />
    </>
  )
}
