/** Tables for spreadsheets (RFC 4180). */

export type CsvCell = string | number | null;

/** Rows of cells; null is an empty cell. */
export const csvText = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

/** A text that a spreadsheet would take for a formula is kept from being one by an apostrophe. */
function cell(value: CsvCell): string {
  if (typeof value !== 'string') return value === null ? '' : String(value);
  const literal = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(literal) ? `"${literal.replaceAll('"', '""')}"` : literal;
}
