import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Puts lines between a section's marks in docs/performance.md; a section that is not there yet goes to the end.
 * `writer` is the script in tests/bench that measured them.
 */
export function writeSection(name: string, writer: string, lines: readonly string[]): void {
  const path = fileURLToPath(new URL('../../docs/performance.md', import.meta.url));
  const before = existsSync(path) ? readFileSync(path, 'utf8') : '# Performance\n';
  const begin = `<!-- ${name}: written by tests/bench/${writer} -->`;
  const end = `<!-- /${name} -->`;
  const text = [begin, ...lines, end].join('\n');
  const from = before.indexOf(begin);
  const to = before.indexOf(end);
  const after =
    from >= 0 && to > from
      ? before.slice(0, from) + text + before.slice(to + end.length)
      : `${before.trimEnd()}\n\n${text}\n`;
  writeFileSync(path, after);
}
