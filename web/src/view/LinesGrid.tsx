import { Fragment } from 'preact'
import { useRef } from 'preact/hooks'
import { scaleFor } from '../chart/scale.ts'
import { StripChart } from '../chart/StripChart.tsx'
import type { Answer, LineView } from '../door/protocol.ts'
import { Figure } from './answers/Figure.tsx'
import { CautionNote } from './CautionNote.tsx'
import { useApp } from './context.ts'
import { Diagnosis } from './Diagnosis.tsx'
import { GuessEditor } from './GuessEditor.tsx'
import { useGrid } from './useGrid.ts'
import { Working } from './Working.tsx'

interface Props {
  lines: readonly LineView[]
  labelledBy: string
}

/** A chapter's lines as a grid: label, how it is set down, unit, and what it comes to. */
export function LinesGrid({ lines, labelledBy }: Props) {
  const table = useRef<HTMLTableElement>(null)
  const keys = useGrid(table)
  return (
    <table ref={table} class="lines" role="grid" aria-labelledby={labelledBy} {...keys}>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">Line</th>
          <th role="columnheader" scope="col">Set down as</th>
          <th role="columnheader" scope="col">Unit</th>
          <th role="columnheader" scope="col">Comes to</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        {lines.map((line) => (
          <LineRows key={line.id} line={line} />
        ))}
      </tbody>
    </table>
  )
}

function LineRows({ line }: { line: LineView }) {
  const app = useApp()
  const cautions = app.beside.value?.cautions.get(line.id) ?? []
  const answer = app.answers.value.get(line.id)
  const found = app.beside.value?.diagnostics.get(line.id) ?? []
  const slip = app.editing.slip.value
  return (
    <Fragment>
      <tr role="row" data-line={line.id} class={line.headline ? 'line headlined' : 'line'}>
        <th role="rowheader" scope="row" class="label">
          <span class="line-label">{line.label}</span>
          {answer?.goal && <span class="line-goal">Goal: {answer.goal}</span>}
          {line.changed && <span class="line-changed">changed in this sheet</span>}
          {line.note && <span class="line-note">{line.note}</span>}
          {line.source && !line.caution && <cite class="line-source">{line.source}</cite>}
        </th>
        <td role="gridcell" class="working">
          <Working line={line} label={line.label} />
          {found.map((diagnostic, i) => (
            <Diagnosis key={i} found={diagnostic} formula={line.formula} />
          ))}
        </td>
        <td role="gridcell" class="unit">{line.unit === '1' ? '' : line.unit}</td>
        <td role="gridcell" class="comes-to">
          <ComesTo answer={answer} />
        </td>
      </tr>
      {slip?.about === line.id && slip.what === 'guess' && (
        <tr role="row" class="beside-line">
          <td role="gridcell" colSpan={4}>
            <GuessEditor line={line} label={line.label} />
          </td>
        </tr>
      )}
      {cautions.length > 0 && (
        <tr role="row" class="beside-line">
          <td role="gridcell" colSpan={4}>
            {cautions.map((caution, i) => (
              <CautionNote key={i} caution={caution} />
            ))}
          </td>
        </tr>
      )}
    </Fragment>
  )
}

const stripWidth = 150

function ComesTo({ answer }: { answer: Answer | undefined }) {
  if (answer === undefined) return <span class="nothing-yet">—</span>
  if (answer.kind === 'choose') return <Figure id={answer.id} label={answer.label} shown={answer.choice ?? answer.shown.middle} inGrid />
  const { shown } = answer
  const scale = scaleFor([answer], stripWidth)
  const ranged = shown.low !== shown.high
  return (
    <>
      <Figure id={answer.id} label={answer.label} shown={shown.middle} inGrid />
      {ranged && scale !== undefined && <StripChart answer={answer} scale={scale} height={14} />}
      {ranged && <span class="between">{shown.low} to {shown.high}</span>}
    </>
  )
}
