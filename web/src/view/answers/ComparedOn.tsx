import { useState } from 'preact/hooks'
import { type ComparedDifference, type ComparedLine, type Comparison, list, type Worth } from '../../door/answers.ts'
import type { Files } from '../../door/protocol.ts'
import type { OpenSheet } from '../../state/app.ts'
import { Answered } from './Answered.tsx'
import { ExplainedBars } from './ExplainedBars.tsx'
import { FlipCurve } from './FlipCurve.tsx'
import { PickLine } from './PickLine.tsx'
import { useAsk } from './useAsk.ts'
import { WorthKnowing } from './WorthKnowing.tsx'

export interface BesideQuestion {
  with: readonly string[]
  files: Files
}

interface Props {
  sheet: OpenSheet
  comparison: Comparison
  beside: BesideQuestion
}

/** One outcome looked into: what explains the difference, what is worth finding out first, and where the answer turns. */
export function ComparedOn({ sheet, comparison, beside }: Props) {
  const lines = list(comparison.lines)
  const [picked, pick] = useState<string | undefined>(undefined)
  const on = lines.find(({ id }) => id === picked) ?? usual(lines)
  const worth = useAsk<Worth>('worth', on?.better ? { ...beside, on: on.id } : undefined)
  if (on === undefined) return null
  const short = (at: number): string => comparison.scenarios[at]?.short || (comparison.scenarios[at]?.title ?? '')
  return (
    <section class="compared-on" aria-labelledby="compared-on">
      <h3 id="compared-on">Looked into</h3>
      <PickLine label="Outcome" picks={lines.map(({ id, label, unit, chapter }) => ({ id, label, unit, kind: 'formula', group: chapter }))} picked={on.id} onPick={pick} />
      {on.difference.map((difference) => (
        <Explained key={difference.scenario} difference={difference} name={short(difference.scenario)} several={on.difference.length > 1} unit={on.unit} />
      ))}
      <FlipCurve sheet={sheet} beside={beside} outcome={on.id} likeliest={list(worth.answer?.guesses)[0]?.id} />
      <h3>Worth knowing before choosing</h3>
      {on.better ? (
        <Answered asked={worth} waiting="What is worth knowing is">
          {(answer) => <WorthKnowing worth={answer} />}
        </Answered>
      ) : (
        <p>The sheet does not say whether more or less of {on.label.toLowerCase()} is better, so there is nothing to choose by.</p>
      )}
    </section>
  )
}

/** The outcome to look into at first: the last of which more is better, which is what the season leaves behind everything. */
function usual(lines: readonly ComparedLine[]): ComparedLine | undefined {
  return lines.findLast(({ better, unit }) => better === 'more' && unit === '$') ?? lines.findLast(({ better }) => better === 'more') ?? lines[0]
}

interface ExplainedProps {
  difference: ComparedDifference
  name: string
  several: boolean
  unit: string
}

function Explained({ difference, name, several, unit }: ExplainedProps) {
  return (
    <section class="explained">
      {several && <h4>{name}</h4>}
      <p>{difference.sentence}</p>
      <h4>What explains it</h4>
      <p>{difference.explanation}</p>
      <ExplainedBars difference={difference} unit={unit} />
    </section>
  )
}
