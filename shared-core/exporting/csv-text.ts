export type CsvCell = string | number;

/**
 * Rows as CSV (RFC 4180: comma, CRLF, quotes doubled). Text that a spreadsheet would run as a formula gets an
 * apostrophe before it; numbers are written as they are, with a point. Throws on a number that is not finite.
 */
export function csvText(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [head, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(cell: CsvCell): string {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new Error('a CSV holds finite numbers only');
    return String(cell);
  }
  const safe = /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Six significant digits: enough to compute with, and no noise. */
export function sixDigits(value: number): number {
  return Number(value.toPrecision(6));
}
