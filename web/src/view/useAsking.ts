import { useEffect, useRef, useState } from 'preact/hooks'
import { type Asked, Latest } from '../state/latest.ts'
import { useApp } from './context.ts'

/**
 * Asks the reckoner about what is being typed: the newest question only, once
 * typing has paused. An undefined question asks nothing.
 */
export function useAsking<T>(method: string, question: object | undefined, pause = 120): Asked<T> {
  const app = useApp()
  const [asked, setAsked] = useState<Asked<T>>({ asking: false })
  const latest = useRef<Latest<object, T> | undefined>(undefined)
  useEffect(() => {
    latest.current = new Latest((q) => app.ask<T>(method, q), setAsked)
    return () => latest.current?.end()
  }, [method])
  const text = JSON.stringify(question)
  useEffect(() => {
    if (question === undefined) return
    const timer = setTimeout(() => latest.current?.ask(question), pause)
    return () => clearTimeout(timer)
  }, [text])
  return asked
}
