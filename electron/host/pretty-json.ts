/** The text of a small JSON file that people may read: indented, ended by a line. */
export function prettyJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
