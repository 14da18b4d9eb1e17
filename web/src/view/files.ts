/** Gives the person a text as a file to keep, through the browser's own download. */
export function saveAs(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/yaml' }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The download has its own hold on the data once the click is over.
  setTimeout(() => URL.revokeObjectURL(url), 0)
}
