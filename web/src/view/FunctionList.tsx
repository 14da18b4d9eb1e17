import { useState } from 'preact/hooks'
import type { DefinedFunction } from '../door/protocol.ts'
import { useApp } from './context.ts'

/** The functions a formula may use, as the reckoner itself lists them; fetched when first looked at. */
export function FunctionList() {
  const app = useApp()
  const [seen, see] = useState(false)
  const families = new Map<string, DefinedFunction[]>()
  for (const f of app.functions.value) families.set(f.family, [...(families.get(f.family) ?? []), f])
  return (
    <details
      class="functions"
      onToggle={() => {
        if (seen) return
        see(true)
        void app.learnFunctions()
      }}
    >
      <summary>What a formula may use</summary>
      {[...families].map(([family, list]) => (
        <section key={family}>
          <h3>{family}</h3>
          <dl>
            {list.map((f) => (
              <div key={f.name}>
                <dt>
                  <code>
                    {f.name}({(f.args ?? []).map((a) => a.name).join(', ')})
                  </code>
                </dt>
                <dd>
                  {f.summary}
                  {f.example && (
                    <>
                      {' '}
                      For instance <code>{f.example}</code>.
                    </>
                  )}
                </dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </details>
  )
}
