/** Room for one row of a picture with a label above each bar, in pixels. */
export const rowHeight = 44

/** What a row of a picture's bars is told apart by: labels may be alike. */
export interface Row {
  key: string
  label: string
}

/** The height of a picture of so many rows, with its axis. */
export function heightOf(rows: readonly Row[]): number {
  return rows.length * rowHeight + 46
}

/** A label cut to what fits in a width, by a letter's usual width at the pictures' size. */
export function fitted(label: string, width: number): string {
  const most = Math.max(Math.floor(width / 6.4), 12)
  return label.length <= most ? label : `${label.slice(0, most - 1).trimEnd()}…`
}
