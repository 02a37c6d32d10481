import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const pageOf = (name: string): string => fileURLToPath(new URL(`../../docs/${name}.md`, import.meta.url));
const document = pageOf('performance-tables');
const marksOf = (name: string, writer: string) => ({
  begin: `<!-- ${name}: written by tests/bench/${writer} -->`,
  end: `<!-- /${name} -->`,
});

/** The lines a section has now. */
export function readSection(name: string, writer: string): string[] {
  const { begin, end } = marksOf(name, writer);
  const text = existsSync(document) ? readFileSync(document, 'utf8') : '';
  const from = text.indexOf(begin);
  const to = text.indexOf(end);
  return from >= 0 && to > from ? text.slice(from + begin.length, to).split('\n') : [];
}

/**
 * Puts lines between a section's marks in a page of docs, performance-tables.md unless told; a section that is not there yet goes to the end.
 * `writer` is the script in tests/bench that measured them.
 */
export function writeSection(
  name: string,
  writer: string,
  lines: readonly string[],
  into = 'performance-tables',
): void {
  const page = pageOf(into);
  const before = existsSync(page) ? readFileSync(page, 'utf8') : '# Performance\n';
  const { begin, end } = marksOf(name, writer);
  const text = [begin, ...lines, end].join('\n');
  const from = before.indexOf(begin);
  const to = before.indexOf(end);
  const after =
    from >= 0 && to > from
      ? before.slice(0, from) + text + before.slice(to + end.length)
      : `${before.trimEnd()}\n\n${text}\n`;
  writeFileSync(page, after);
}
