import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { App } from '../state/app.ts'

export const AppContext = createContext<App | undefined>(undefined)

/** The page's one App. Throws outside of it: a component cannot do without. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (app === undefined) throw new Error('outside of the page')
  return app
}
