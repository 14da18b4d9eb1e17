import type { EditSet } from '../door/protocol.ts'
import type { App } from './app.ts'

/** Ends a drag: takes what was tried last as a change, or lets go of it when it could not be. */
export async function takeTried(app: Pick<App, 'idle' | 'sheet' | 'letGo' | 'edit'>, about: string, set: EditSet): Promise<void> {
  await app.idle()
  if (app.sheet.value?.refused.some((found) => found.about === about)) app.letGo(about)
  else app.edit({ about, set })
}
