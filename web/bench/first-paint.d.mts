/** The scripts and styles of a built page that its first view waits for, by name. */
export function firstPaint(files: ReadonlyMap<string, Uint8Array>): string[]
