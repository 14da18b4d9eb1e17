import { useEffect, useMemo, useState } from 'preact/hooks'
import { type Asked, Latest } from '../../state/latest.ts'
import { useApp } from '../context.ts'

/** The answer to a question of the open sheet, asked again whenever the question, the sheet or the units shown change. Undefined asks nothing. */
export function useAsk<T>(method: string, question: object | undefined): Asked<T> {
  const app = useApp()
  const [asked, setAsked] = useState<Asked<T>>({ asking: question !== undefined })
  const latest = useMemo(() => new Latest<object, T>((q) => app.ask<T>(method, q), setAsked), [app, method])
  const text = question === undefined ? '' : JSON.stringify(question)
  const source = app.sheet.value?.view.source
  const system = app.system.value
  useEffect(() => {
    if (text !== '') latest.ask(JSON.parse(text) as object)
  }, [latest, text, source, system])
  useEffect(() => () => latest.end(), [latest])
  return asked
}
