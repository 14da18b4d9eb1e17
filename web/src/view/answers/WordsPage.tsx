import { useEffect, useState } from 'preact/hooks'
import type { DefinedFunction } from '../../door/protocol.ts'
import type { OpenSheet } from '../../state/app.ts'
import { type Entry, matching, words } from '../../state/words.ts'
import '../../style/answers.css'
import { useApp } from '../context.ts'

/** Help: what the page's words mean, and every function a formula may use, searched as one. */
export function WordsPage(_: { sheet: OpenSheet }) {
  const app = useApp()
  const [sought, seek] = useState('')
  useEffect(() => void app.learnFunctions(), [app])
  const said = matching(words, sought, ({ word, meaning }) => [word, meaning])
  const functions = matching(app.functions.value, sought, (f) => [f.name, f.family, f.summary, ...(f.args ?? []).map((arg) => arg.name)])
  const families = [...new Set(functions.map((f) => f.family))]
  return (
    <section class="answer-page words" aria-labelledby="page-title">
      <h2 id="page-title">Words and functions</h2>
      <label class="pick">
        <span>Look for</span>
        <span class="field long">
          <input type="search" autocomplete="off" value={sought} onInput={(event) => seek(event.currentTarget.value)} />
        </span>
      </label>
      <p role="status" class="found-count">
        {sought.trim() === '' ? '' : `${said.length} words and ${functions.length} functions`}
      </p>
      {said.length > 0 && (
        <section aria-labelledby="the-words">
          <h3 id="the-words">The words</h3>
          <dl>{said.map((entry) => <Word key={entry.word} entry={entry} />)}</dl>
        </section>
      )}
      {families.map((family) => (
        <section key={family}>
          <h3>Functions: {family}</h3>
          <dl>
            {functions
              .filter((f) => f.family === family)
              .map((f) => (
                <OneFunction key={f.name} f={f} />
              ))}
          </dl>
        </section>
      ))}
      {said.length + functions.length === 0 && app.functions.value.length > 0 && <p>Nothing here says “{sought.trim()}”.</p>}
    </section>
  )
}

function Word({ entry }: { entry: Entry }) {
  return (
    <div>
      <dt>{entry.word}</dt>
      <dd>{entry.meaning}</dd>
    </div>
  )
}

function OneFunction({ f }: { f: DefinedFunction }) {
  const args = f.args ?? []
  return (
    <div id={`function-${f.name}`}>
      <dt>
        <code>
          {f.name}({args.map((arg) => arg.name).join(', ')})
        </code>{' '}
        <span class="gives">gives {f.result}</span>
      </dt>
      <dd>
        <p>{f.summary}</p>
        {args.length > 0 && (
          <ul>
            {args.map((arg) => (
              <li key={arg.name}>
                <code>{arg.name}</code>, {arg.unit}
                {arg.summary && `: ${arg.summary}`}
              </li>
            ))}
          </ul>
        )}
        {f.example && (
          <p>
            For instance <code>{f.example}</code>
          </p>
        )}
        {f.source && <cite class="line-source">{f.source}</cite>}
      </dd>
    </div>
  )
}
