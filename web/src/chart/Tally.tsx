import { bucketsFor } from './tally.ts'

const step = 13
const depth = 10

/** Ten sap buckets, filled as far as the goal was met. The words beside it say the same, so it is hidden from readers. */
export function Tally({ share }: { share: number }) {
  return (
    <svg class="tally" aria-hidden="true" viewBox={`0 0 ${10 * step} 14`} width={10 * step} height={14}>
      {bucketsFor(share).map((full, i) => {
        const x = i * step
        const level = 2 + depth * (1 - full)
        // The sides lean in by one pixel from rim to foot.
        const lean = (y: number): number => 1 + (y - 2) / depth
        return (
          <g key={i}>
            {full > 0 && <path class="sap" d={`M${x + lean(level)} ${level}H${x + 11 - lean(level) + 1}L${x + 10} 12H${x + 2}Z`} />}
            <path class="bucket" d={`M${x + 1} 2H${x + 11}L${x + 10} 12H${x + 2}Z`} />
          </g>
        )
      })}
    </svg>
  )
}
