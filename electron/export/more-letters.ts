import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { z } from 'zod';
import { type Letters, openLetters } from '#core/drawing/pdf-letters';
import { letterBytes } from './letters';

const require = createRequire(import.meta.url);

/** Open families (Noto Sans, OFL) that the app brings along for names and cues in other scripts. */
const scripts = ['arabic', 'devanagari', 'hebrew', 'thai', 'sc', 'jp', 'kr'] as const;
type Script = (typeof scripts)[number];

/** Han letters look unlike in Chinese, Japanese and Korean: what stands beside them tells which is meant. */
function inOrder(words: string): readonly Script[] {
  const first: Script | null = /[\u3040-\u30ff]/u.test(words)
    ? 'jp'
    : /\p{Script=Hangul}/u.test(words)
      ? 'kr'
      : null;
  return first ? [first, ...scripts.filter((each) => each !== first)] : scripts;
}

/** Which letters each file of a script holds, as its package lists them. */
const rangesSchema = z.record(z.string(), z.string());
const known = new Map<Script, Promise<Readonly<Record<string, string>>>>();

function rangesOf(script: Script): Promise<Readonly<Record<string, string>>> {
  const found =
    known.get(script) ??
    readFile(require.resolve(`@fontsource-variable/noto-sans-${script}/unicode.json`), 'utf8').then((text) =>
      rangesSchema.parse(JSON.parse(text)),
    );
  known.set(script, found);
  return found;
}

/** "U+25ee8,U+4e00-4e10": whether a letter is among these. */
function holds(ranges: string, code: number): boolean {
  return ranges.split(',').some((range) => {
    const [, from = '', to = from] = /^U\+([0-9a-f]+)(?:-([0-9a-f]+))?$/i.exec(range.trim()) ?? [];
    return code >= Number.parseInt(from, 16) && code <= Number.parseInt(to, 16);
  });
}

/** The file that has the first of these letters, chosen with an eye on the others; null when none has it. */
export async function letterFile(words: string): Promise<string | null> {
  const code = words.codePointAt(0);
  if (code === undefined) return null;
  for (const script of inOrder(words)) {
    const found = Object.entries(await rangesOf(script)).find(([, ranges]) => holds(ranges, code));
    if (!found) continue;
    const folder = path.dirname(require.resolve(`@fontsource-variable/noto-sans-${script}/unicode.json`));
    const part = found[0].replace(/[[\]]/g, '');
    return path.join(folder, 'files', `noto-sans-${script}-${part}-wght-normal.woff2`);
  }
  return null;
}

/** The page's letters with every file that these words need. */
export async function lettersFor(words: string): Promise<Letters> {
  const bytes = await letterBytes();
  const others: Uint8Array[] = [];
  const lacking = new Set<string>();
  for (;;) {
    const letters = openLetters(bytes, others);
    const missing = letters.missing(words).filter((letter) => !lacking.has(letter));
    const file = await letterFile(missing.join(''));
    if (file) others.push(await readFile(file));
    if (missing[0] === undefined) return letters;
    // asked for once: a letter that its file lacks after all is not asked for again
    lacking.add(missing[0]);
  }
}
