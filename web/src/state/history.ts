/** One change that can be undone, as the text before it. */
export interface Step {
  text: string
  /** What the change was about, in words. */
  what: string
  /** Changes of one mark that follow each other closely are one step. */
  mark: string
  /** When it was last added to, in milliseconds. */
  at: number
}

/** The changes made to the open sheet: those that can be undone, the last one last, and those that were undone. */
export interface History {
  past: readonly Step[]
  future: readonly Step[]
}

export const noHistory: History = { past: [], future: [] }

/** How long a person may pause within one change. */
const pause = 1500
const mostKept = 200

/** The history after a change; a change that goes on with the last one adds no step. `mark` is empty for one that stands alone. */
export function changed(history: History, step: Step): History {
  const last = history.past.at(-1)
  const goesOn = last !== undefined && history.future.length === 0 && step.mark !== '' && last.mark === step.mark && step.at - last.at < pause
  if (goesOn) return { past: [...history.past.slice(0, -1), { ...last, at: step.at }], future: [] }
  return { past: [...history.past, step].slice(-mostKept), future: [] }
}

/** Whether a change is a step of its own, given the history after it and before. */
export function isNewStep(before: History, after: History): boolean {
  return after.past.length !== before.past.length || after.past.at(-1)?.text !== before.past.at(-1)?.text
}

/** Going back from `now`: the text to put back, and the history then; undefined at the beginning. */
export function back(history: History, now: string): { text: string; history: History } | undefined {
  const last = history.past.at(-1)
  if (last === undefined) return undefined
  return { text: last.text, history: { past: history.past.slice(0, -1), future: [{ ...last, text: now, mark: '' }, ...history.future] } }
}

/** Going forth again from `now`; undefined when nothing was undone. */
export function forth(history: History, now: string): { text: string; history: History } | undefined {
  const next = history.future[0]
  if (next === undefined) return undefined
  return { text: next.text, history: { past: [...history.past, { ...next, text: now, mark: '' }], future: history.future.slice(1) } }
}
