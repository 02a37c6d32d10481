import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export type Layer = 'shared-core' | 'electron' | 'renderer';
export const layers: readonly Layer[] = ['shared-core', 'electron', 'renderer'];

export interface SourceFile {
  /** Path from the root, with forward slashes. */
  readonly file: string;
  readonly layer: Layer;
  readonly text: string;
  /** What it imports: a file from the root for our own, the package's name otherwise. */
  readonly imports: readonly { readonly target: string; readonly own: boolean; readonly typeOnly: boolean }[];
}

function* filesUnder(folder: string): Generator<string> {
  for (const entry of readdirSync(path.join(root, folder), { withFileTypes: true })) {
    const file = `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* filesUnder(file);
    else if (/\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts')) yield file;
  }
}

const importForm =
  /(?:^|\n)\s*(?:import|export)\s+(type\s)?[^'";]*?from\s*'([^']+)'|(?:^|\n)\s*import\s*'([^']+)'|import\(\s*'([^']+)'\s*\)|new URL\(\s*'(\.[^']+)'/g;

function importsOf(file: string, text: string, known: ReadonlySet<string>): SourceFile['imports'] {
  return [...text.matchAll(importForm)].map((match) => {
    const typeOnly = match[1] !== undefined;
    const name = match[2] ?? match[3] ?? match[4] ?? match[5] ?? '';
    const from = name.startsWith('.')
      ? path.posix.join(path.posix.dirname(file), name)
      : name.startsWith('#core/')
        ? `shared-core/${name.slice('#core/'.length)}`
        : /^#(electron|renderer|tests)\//.test(name)
          ? name.slice(1)
          : null;
    if (from === null) return { target: name, own: false, typeOnly };
    const found = [from, `${from}.ts`, `${from}.tsx`].find((each) => known.has(each));
    return { target: found ?? from, own: true, typeOnly };
  });
}

/** Every source file of the three layers with its imports. */
export function sourceFiles(): readonly SourceFile[] {
  const files = layers.flatMap((layer) => [...filesUnder(layer)].map((file) => ({ file, layer })));
  const known = new Set(files.map((each) => each.file));
  return files.map(({ file, layer }) => {
    const text = readFileSync(path.join(root, file), 'utf8');
    return { file, layer, text, imports: importsOf(file, text, known) };
  });
}
