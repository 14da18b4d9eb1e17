import type { Answer, LineView, Reckoning, TableView, View } from '../door/protocol.ts'

/** One line of the printed plan: what it comes to, and between what 8 seasons of 10 fall where that says more. */
export interface PlanLine {
  id: string
  label: string
  middle: string
  between: string
}

/** A table as it is printed: a row of heads over rows of a label and texts. */
export interface PlanTable {
  label: string
  heads: string[]
  /** Its columns stand below each other, since they are many and its rows few. */
  turned: boolean
  rows: { label: string; cells: string[] }[]
}

/** What the plan prints of a sheet. The paragraph is left out: on paper the table of headlines stands in its place. */
export interface Plan {
  title: string
  about: string
  headlines: { answer: Answer; line: PlanLine; goal: string }[]
  cautions: { text: string; source: string }[]
  chapters: { title: string; lines: PlanLine[]; tables: PlanTable[] }[]
  drawn: string
}

/** Puts a reckoned sheet together for paper: every line and table, none of what is only for changing them. */
export function planOf(view: View, reckoning: Reckoning): Plan {
  const answers = new Map(reckoning.lines.map((answer) => [answer.id, answer]))
  const cautions = new Map(reckoning.cautions.map(({ text, source }) => [text, source]))
  return {
    title: view.title,
    about: view.about ?? '',
    headlines: reckoning.lines
      .filter((answer) => answer.headline)
      .map((answer) => ({ answer, line: lineOf(answer.id, answer.label, answer), goal: goalOf(answer) })),
    cautions: [...cautions].map(([text, source]) => ({ text, source })),
    chapters: view.chapters.map(({ title, lines, tables }) => ({
      title,
      // What stands at the top is not said twice.
      lines: lines.filter((line) => !answers.get(line.id)?.headline).map((line) => lineFor(line, answers.get(line.id))),
      tables: tables.map((table) => tableOf(table, answers)),
    })),
    drawn: `${reckoning.seasons.toLocaleString('en-US')} seasons drawn, seed ${reckoning.seed}`,
  }
}

function lineFor(line: LineView, answer: Answer | undefined): PlanLine {
  if (line.kind !== 'choose') return lineOf(line.id, line.label, answer)
  const chosen = line.among?.find(({ id }) => id === line.choose)?.label ?? line.choose ?? ''
  return { id: line.id, label: line.label, middle: chosen, between: '' }
}

function lineOf(id: string, label: string, answer: Answer | undefined): PlanLine {
  if (answer === undefined) return { id, label, middle: 'not reckoned', between: '' }
  const { low, middle, high } = answer.shown
  return { id, label, middle, between: low === high ? '' : `${low} to ${high}` }
}

function goalOf(answer: Answer): string {
  return answer.goal_met === null || !answer.shown.goal ? '' : `${answer.goal ?? 'goal met'}: ${answer.shown.goal}`
}

/** How many columns fit in half the width of a page. */
const mostAcross = 5

/** The middle of each cell; turned round when its columns are many and its rows few. */
function tableOf(table: TableView, answers: ReadonlyMap<string, Answer>): PlanTable {
  const said = table.rows.map((row) => row.cells.map((cell) => answers.get(cell.id)?.shown.middle ?? ''))
  const heads = table.columns.map((column) => column.label)
  const labels = table.rows.map((row) => row.label)
  if (heads.length <= mostAcross || labels.length > mostAcross) {
    return { label: table.label, heads, turned: false, rows: labels.map((label, r) => ({ label, cells: said[r] ?? [] })) }
  }
  return { label: table.label, heads: labels, turned: true, rows: heads.map((label, c) => ({ label, cells: said.map((row) => row[c] ?? '') })) }
}
