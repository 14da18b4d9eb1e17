/**
 * The number a person typed, or undefined when it is not one. Takes a decimal
 * point, grouping commas in threes, a sign, and an exponent.
 */
export function readNumber(text: string): number | undefined {
  const typed = text.trim().replace(/^−/, '-')
  const plain = /^[-+]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(typed) ? typed.replaceAll(',', '') : typed
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain)) return undefined
  const value = Number(plain)
  return Number.isFinite(value) ? value : undefined
}

/** A number as it stands in a field: shortest digits that read back the same. */
export function writeNumber(value: number | undefined): string {
  return value === undefined ? '' : String(value)
}

/** The numbers of a list typed with commas, semicolons or blanks between, or undefined when one is not a number. */
export function readNumbers(text: string): number[] | undefined {
  const parts = text.split(/[\s,;]+/).filter((part) => part !== '')
  const values = parts.map(readNumber)
  return values.every((v) => v !== undefined) ? values : undefined
}

/** A list of numbers as it stands in a field. */
export function writeNumbers(values: readonly number[] | undefined): string {
  return (values ?? []).map(String).join(', ')
}
