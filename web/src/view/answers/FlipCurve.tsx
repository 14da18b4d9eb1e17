import { useMemo, useState } from 'preact/hooks'
import { flipPicture } from '../../chart/flip.ts'
import { PlotFigure } from '../../chart/PlotFigure.tsx'
import { type Flip, list, type Listed } from '../../door/answers.ts'
import type { OpenSheet } from '../../state/app.ts'
import { linesOf } from '../../state/lines.ts'
import { Answered } from './Answered.tsx'
import { AsNumbers } from './AsNumbers.tsx'
import type { BesideQuestion } from './ComparedOn.tsx'
import { DataTable } from './DataTable.tsx'
import { PickLine } from './PickLine.tsx'
import { useAsk } from './useAsk.ts'

interface Props {
  sheet: OpenSheet
  beside: BesideQuestion
  outcome: string
  /** The line the answer is likeliest to turn on, looked at first. */
  likeliest: string | undefined
}

/** From which value of a number the answer turns, drawn over all the values it might have. */
export function FlipCurve({ sheet, beside, outcome, likeliest }: Props) {
  const picks = useMemo(() => linesOf(sheet.view).filter(({ kind }) => kind === 'is' || kind === 'guess' || kind === 'records'), [sheet.view])
  const [picked, pick] = useState<string | undefined>(undefined)
  const about = [picked, likeliest, picks[0]?.id].find((id) => picks.some((line) => line.id === id))
  const asked = useAsk<{ flips: Listed<Flip> }>('flip', about === undefined ? undefined : { ...beside, about, outcome })
  return (
    <section class="flip" aria-labelledby="where-it-turns">
      <h3 id="where-it-turns">Where the answer turns</h3>
      <PickLine label="As this changes" picks={picks} picked={about} onPick={pick} />
      <Answered asked={asked} waiting="The turn is">
        {({ flips }) => list(flips).map((flip) => <OneFlip key={flip.second} flip={flip} />)}
      </Answered>
    </section>
  )
}

function OneFlip({ flip }: { flip: Flip }) {
  const draw = useMemo(() => (width: number) => flipPicture(flip, width), [flip])
  const unit = flip.unit === '1' ? '' : `, ${flip.unit}`
  return (
    <div class="one-flip">
      <p>{flip.sentence}</p>
      <p class="axis-words">
        Upward: {flip.second} less {flip.first} in {flip.outcome_label.toLowerCase()}, {flip.outcome_unit}. Along: {flip.label.toLowerCase()}
        {unit}. The line is the middle season; 8 seasons in 10 fall within the band.
      </p>
      <PlotFigure label={`${flip.sentence} The same numbers stand in the table below.`} draw={draw} />
      <AsNumbers of="The curve">
        <DataTable
          quiet
          caption={`${flip.second} less ${flip.first} as ${flip.label.toLowerCase()} changes`}
          head={[flip.label, 'In the middle season', `${flip.second} ahead in`]}
          rows={list(flip.curve).map(({ value, shown }) => ({ key: String(value), cells: [shown.value, shown.middle, shown.ahead] }))}
        />
      </AsNumbers>
    </div>
  )
}
