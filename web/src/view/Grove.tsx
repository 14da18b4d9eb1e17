/** Where each trunk stands, how wide it is, how high its bucket hangs, and how far its boughs reach. */
const trunks = [
  { x: 34, wide: 15, hangs: 150, reach: 24 },
  { x: 112, wide: 24, hangs: 138, reach: 34 },
  { x: 200, wide: 19, hangs: 156, reach: 28 },
]

/** Three tapped maples in line, for the title page. An ornament only. */
export function Grove() {
  return (
    <svg class="grove" aria-hidden="true" viewBox="0 0 250 230" width={250} height={230}>
      <path class="snow" d="M0 214c28-8 52 3 84-3s60-9 92-2 52-3 74 1" />
      {trunks.map(({ x, wide, hangs, reach }) => (
        <g key={x}>
          <path
            class="bark"
            d={`M${x - wide / 2 - 3} 212C${x - wide / 2} 150 ${x - wide / 2 + 2} 90 ${x - wide / 2 + 3} 14M${x + wide / 2 + 3} 211C${x + wide / 2} 150 ${x + wide / 2 - 2} 90 ${x + wide / 2 - 3} 10`}
          />
          <path
            class="bark"
            d={`M${x - wide / 2 + 3} 60C${x - reach} 44 ${x - reach - 6} 30 ${x - reach - 8} 12M${x + wide / 2 - 3} 74C${x + reach} 58 ${x + reach + 4} 40 ${x + reach + 6} 20M${x + reach - 3} 52l9-4M${x - reach + 1} 40l-9-1`}
          />
          <path class="grain" d={`M${x - 2} 40v28M${x + 2} 84v22M${x - 3} 112v16M${x + 1} 196v10M${x - 1} 20v10`} />
          <path class="spout" d={`M${x} ${hangs - 5}l10 3`} />
          <path class="pail" d={`M${x - 4} ${hangs}h22l-3 26h-16zM${x - 5} ${hangs}l12-6 12 6`} />
        </g>
      ))}
    </svg>
  )
}
