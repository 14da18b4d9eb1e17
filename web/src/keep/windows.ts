/** Told to the page's other windows in this browser: a sheet was kept in a new version, or taken away (0). */
export interface News {
  name: string
  version: number
}

/** The other windows of the page. `onnews` hears what they tell, never what this one does. */
export interface Windows {
  tell(news: News): void
  onnews: (news: News) => void
}

/** The other windows by the browser's own channel; none where it has no such thing. */
export function otherWindows(): Windows {
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('thawbook')
  const windows: Windows = { tell: (news) => channel?.postMessage(news), onnews: () => undefined }
  channel?.addEventListener('message', (event: MessageEvent<unknown>) => {
    if (isNews(event.data)) windows.onnews(event.data)
  })
  return windows
}

/** Whether a message is one of ours: another version of the page may say things this one does not know. */
export function isNews(said: unknown): said is News {
  return typeof said === 'object' && said !== null && 'name' in said && typeof said.name === 'string' && 'version' in said && typeof said.version === 'number'
}
