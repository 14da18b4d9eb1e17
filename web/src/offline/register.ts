/** What the page is told of a later build of itself. */
export interface Later {
  /** A later build is kept and opens the next time. */
  come(): void
}

/** Keeps the page in the browser so that it opens without its host. A browser that cannot is no worse off. */
export async function keepOffline(packed: boolean, later: Later): Promise<void> {
  if (!('serviceWorker' in navigator)) return
  const firstVisit = navigator.serviceWorker.controller === null
  const at = new URL(packed ? 'sw.js?packed' : 'sw.js', document.baseURI)
  const registration = await navigator.serviceWorker.register(at, { updateViaCache: 'none' }).catch(() => undefined)
  if (registration === undefined || firstVisit) return
  const watch = (worker: ServiceWorker | null): void =>
    worker?.addEventListener('statechange', () => worker.state === 'activated' && later.come())
  watch(registration.installing)
  registration.addEventListener('updatefound', () => watch(registration.installing))
}
