import { render } from 'preact'
import '../style/plan.css'
import type { App } from '../state/app.ts'
import { planOf } from './plan.ts'
import { PlanSheet } from './PlanSheet.tsx'

/**
 * Puts the plan in the page's place whenever it is printed from the sheet
 * itself; the sheet's other pages print as they stand. It is made only then,
 * so that no change of a number has to draw it too.
 */
export function printPlans(app: Pick<App, 'sheet' | 'reckoning' | 'page'>): void {
  const root = document.createElement('div')
  root.id = 'plan'
  document.body.append(root)
  addEventListener('beforeprint', () => {
    const view = app.sheet.peek()?.view
    const reckoning = app.reckoning.peek()
    if (view === undefined || reckoning === undefined || app.page.peek() !== 'sheet') return
    const on = new Date().toLocaleDateString('en-US', { day: 'numeric', month: 'long', year: 'numeric' })
    render(<PlanSheet plan={planOf(view, reckoning)} on={on} />, root)
  })
  addEventListener('afterprint', () => render(null, root))
}
