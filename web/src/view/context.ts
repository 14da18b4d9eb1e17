import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { App } from '../state/app.ts'
import type { Shelving } from '../state/shelving.ts'

export const AppContext = createContext<App | undefined>(undefined)

/** The page's one App. Throws outside of it: a component cannot do without. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (app === undefined) throw new Error('outside of the page')
  return app
}

export const ShelvingContext = createContext<Shelving | undefined>(undefined)

/** What can be done with whole sheets. Throws outside of the page. */
export function useShelving(): Shelving {
  const shelving = useContext(ShelvingContext)
  if (shelving === undefined) throw new Error('outside of the page')
  return shelving
}
