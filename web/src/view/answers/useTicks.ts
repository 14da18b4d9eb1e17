import { useState } from 'preact/hooks'

/** What is ticked on a sheet's list. */
export interface Ticks {
  has(id: string): boolean
  turn(id: string): void
}

/** The ticks of a sheet's list, kept in this browser; where nothing can be kept they last as long as the page. */
export function useTicks(sheet: string): Ticks {
  const key = `laid-in ${sheet}`
  const [ticked, setTicked] = useState<readonly string[]>(() => recall(key))
  return {
    has: (id) => ticked.includes(id),
    turn(id) {
      const next = ticked.includes(id) ? ticked.filter((t) => t !== id) : [...ticked, id]
      setTicked(next)
      try {
        localStorage.setItem(key, JSON.stringify(next))
      } catch {
        // Ticks are worth no message of their own.
      }
    },
  }
}

function recall(key: string): string[] {
  try {
    const said: unknown = JSON.parse(localStorage.getItem(key) ?? '[]')
    return Array.isArray(said) ? said.filter((id) => typeof id === 'string') : []
  } catch {
    return []
  }
}
