import type { Answer } from '../door/protocol.ts'

/** An answer's earlier form when it read otherwise, in the same unit; else nothing is to be shown of it. */
export function standsOtherwise(now: Answer, before: Answer | undefined): Answer | undefined {
  if (before === undefined || before.unit !== now.unit || before.p50 === null) return undefined
  const { low, middle, high, goal } = before.shown
  return low === now.shown.low && middle === now.shown.middle && high === now.shown.high && goal === now.shown.goal ? undefined : before
}
