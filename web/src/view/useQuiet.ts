import { useEffect, useState } from 'preact/hooks'

const quiet = 1200

/** A text that follows another only once that has stood still a while, so that a screen reader is not spoken over at every keystroke. */
export function useQuiet(text: string): string {
  const [said, say] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => say(text), quiet)
    return () => clearTimeout(timer)
  }, [text])
  return said
}
