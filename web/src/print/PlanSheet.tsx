import { scaleFor } from '../chart/scale.ts'
import { StripChart } from '../chart/StripChart.tsx'
import type { Plan, PlanTable } from './plan.ts'

/** The plan for paper: the season in short, then every line and table. */
export function PlanSheet({ plan, on }: { plan: Plan; on: string }) {
  return (
    <article class="plan">
      <header>
        <h1>{plan.title}</h1>
        <p>{plan.about}</p>
      </header>
      <Headlines plan={plan} />
      {plan.cautions.length > 0 && (
        <section class="plan-cautions">
          <h2>Mind</h2>
          <ul>
            {plan.cautions.map(({ text, source }) => (
              <li key={text}>
                {text} <cite>{source}</cite>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section class="plan-lines">
        {plan.chapters.map(({ title, lines, tables }, i) => (
          <section key={i}>
            <h2>{title}</h2>
            <dl>
              {lines.map(({ id, label, middle, between }) => (
                <div key={id}>
                  <dt>{label}</dt>
                  <dd>
                    {middle}
                    {between !== '' && <small>{between}</small>}
                  </dd>
                </div>
              ))}
            </dl>
            {tables.map((table, t) => (
              <TableOnPaper key={t} table={table} />
            ))}
          </section>
        ))}
      </section>
      <p class="plan-foot">
        Printed {on} by Thawbook. {plan.drawn}. In 8 seasons of 10 a line falls within its range; in a table stands the
        middle.
      </p>
    </article>
  )
}

/** As wide as the column it stands in, in CSS pixels. */
const stripWidth = 150

function Headlines({ plan }: { plan: Plan }) {
  return (
    <table class="plan-short">
      <thead>
        <tr>
          <th scope="col">The season in short</th>
          <th scope="col">Middle</th>
          <th scope="col" colSpan={2}>
            8 seasons of 10 fall between
          </th>
          <th scope="col">Wished for</th>
        </tr>
      </thead>
      <tbody>
        {plan.headlines.map(({ answer, line, goal }) => {
          const scale = scaleFor([answer], stripWidth)
          return (
            <tr key={line.id}>
              <th scope="row">{line.label}</th>
              <td class="middle">{line.middle}</td>
              <td class="strip">{scale !== undefined && <StripChart answer={answer} scale={scale} height={12} />}</td>
              <td>{line.between}</td>
              <td>{goal}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function TableOnPaper({ table: { label, heads, turned, rows } }: { table: PlanTable }) {
  return (
    <table class={turned ? 'plan-table turned' : 'plan-table'}>
      <thead>
        <tr>
          <th scope="col">{label}</th>
          {heads.map((head, i) => (
            <th key={i} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, r) => (
          <tr key={r}>
            <th scope="row">{row.label}</th>
            {row.cells.map((cell, c) => (
              <td key={c}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
