/** The text of a scenario taken from a sheet, with nothing changed yet. */
export function scenarioText(from: string, title: string): string {
  // A double-quoted JSON string is a double-quoted YAML one.
  return `thawbook: 1\nfrom: ${JSON.stringify(from)}\ntitle: ${JSON.stringify(title)}\n\nchange: {}\n`
}

/** A file name for a sheet of that title, unlike those taken. */
export function fileNameFor(title: string, taken: readonly string[]): string {
  const plain = title.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()
  const stem = plain.replaceAll(/[^a-z0-9]+/g, '-').replaceAll(/^-+|-+$/g, '').slice(0, 60) || 'scenario'
  let name = `${stem}.yaml`
  for (let i = 2; taken.includes(name); i++) name = `${stem}-${i}.yaml`
  return name
}
