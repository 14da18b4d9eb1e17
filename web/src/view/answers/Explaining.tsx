import { useApp } from '../context.ts'
import { Later } from './Later.tsx'

const load = () => import('./ExplainDialog.tsx').then((m) => m.ExplainDialog)

/** The explanation that was asked for, if one was. */
export function Explaining() {
  const app = useApp()
  const id = app.explaining.value
  return id === undefined ? null : <Later key={id} load={load} given={{ id }} />
}
