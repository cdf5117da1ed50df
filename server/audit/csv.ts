/** A text that a spreadsheet would take for a formula gets an apostrophe before it (OWASP, CSV injection). */
const FORMULA = /^[=+\-@\t\r]/;

/** Rows as CSV (RFC 4180). @example csvOf([['a', '=1+1']]) // '"a","\'=1+1"\r\n' */
export function csvOf(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return `"${safe.replaceAll('"', '""')}"`;
}
