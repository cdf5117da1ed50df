/** A table program runs what begins with these; a number with its minus is left alone. */
const FORMULA = /^[=+\-@\t\r']/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;

/**
 * One cell of a table for other programs: quoted where it must be, and never begun like a formula.
 * @example csvCell('=1+1') // "'=1+1"
 */
export function csvCell(text: string): string {
  const safe = FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
