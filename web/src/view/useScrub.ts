import { useEffect, useRef } from 'preact/hooks'
import { type Limits, moved, stepOf } from '../state/scrub.ts'

interface Options {
  value: number | undefined
  limits: Limits
  /** Told each number on the way. */
  onTry: (value: number) => void
  /** Told the last one. */
  onTake: (value: number) => void
  onLetGo: () => void
}

/** Moves a number by steps, from a pointer or from keys. */
export interface Scrub {
  /** So many steps from where the number was when it began to move. */
  to(steps: number): void
  /** So many further steps. */
  by(steps: number): void
  take(): void
  letGo(): void
}

/** A number that is tried as it moves and taken when it stops. */
export function useScrub({ value, limits, onTry, onTake, onLetGo }: Options): Scrub {
  const moving = useRef<{ from: number; step: number; steps: number; now: number } | undefined>(undefined)
  const tell = useRef({ onTry, onTake, onLetGo })
  tell.current = { onTry, onTake, onLetGo }

  const to = (steps: number): void => {
    if (value === undefined && moving.current === undefined) return
    moving.current ??= { from: value ?? 0, step: stepOf(value ?? 0), steps: 0, now: value ?? 0 }
    const { from, step, now } = moving.current
    const next = moved(from, steps, step, limits)
    moving.current = { from, step, steps, now: next }
    if (next !== now) tell.current.onTry(next)
  }
  const end = (): number | undefined => {
    const last = moving.current
    moving.current = undefined
    return last?.now
  }
  const take = (): void => {
    const from = moving.current?.from
    const last = end()
    if (last === undefined) return
    if (last === from) tell.current.onLetGo()
    else tell.current.onTake(last)
  }
  const letGo = (): void => {
    if (end() !== undefined) tell.current.onLetGo()
  }
  // A line that goes while its number moves must not leave the reckoner showing it.
  useEffect(() => () => letGo(), [])
  return { to, by: (steps) => to((moving.current?.steps ?? 0) + steps), take, letGo }
}
