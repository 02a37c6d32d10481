import { describe, expect, it } from 'vitest';
import { againstTheFloors, floors, roomOf } from './floors';
import { layers, type SourceFile, sourceFiles } from './import-walk';

const files = sourceFiles();

/** Circles of imports among files, types too: whoever must know a type must know its file. */
function circles(of: readonly SourceFile[]): readonly string[] {
  const edges = new Map(
    of.map(({ file, imports }) => [file, imports.filter(({ own }) => own).map(({ target }) => target)]),
  );
  const done = new Set<string>();
  const found: string[] = [];
  const walk = (file: string, trail: readonly string[]): void => {
    const at = trail.indexOf(file);
    if (at >= 0) found.push([...trail.slice(at), file].join(' → '));
    if (at >= 0 || done.has(file)) return;
    for (const next of edges.get(file) ?? []) walk(next, [...trail, file]);
    done.add(file);
  };
  for (const file of edges.keys()) walk(file, []);
  return found;
}

const importing = (file: string, target: string, typeOnly = false): SourceFile => ({
  file,
  layer: 'renderer',
  text: '',
  imports: [{ target, own: true, typeOnly }],
});

describe('the house', () => {
  it('is walked whole: files of all three layers, and imports between them', () => {
    for (const layer of layers)
      expect(files.filter((each) => each.layer === layer).length, layer).toBeGreaterThan(5);
    const crossing = files.filter(({ layer, imports }) =>
      imports.some((each) => each.own && !each.target.startsWith(`${layer}/`)),
    );
    expect(crossing.length).toBeGreaterThan(5);
  });

  it('lets imports run only from renderer and electron to shared-core', () => {
    const wrong = files.flatMap(({ file, layer, imports }) =>
      imports
        .filter((each) => each.own)
        .filter((each) => /^(shared-core|electron|renderer|tests|sample-clips)\//.test(each.target))
        .filter((each) => !each.target.startsWith(`${layer}/`) && !each.target.startsWith('shared-core/'))
        .map((each) => `${file} → ${each.target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('imports no file in a circle', () => {
    expect(circles(files)).toEqual([]);
  });

  it('would see a circle, of types too', () => {
    expect(circles([importing('a', 'b'), importing('b', 'a', true)])).toEqual(['a → b → a']);
  });

  it('lets each room import only from rooms before it', () => {
    expect(againstTheFloors(files)).toEqual([]);
  });

  it('would say which import broke which rule', () => {
    expect(
      againstTheFloors([
        importing('renderer/stage/a.ts', 'renderer/bench/b.ts', true),
        importing('renderer/bench/b.ts', 'renderer/stage/a.ts'),
        importing('renderer/attic/c.ts', 'renderer/stage/a.ts'),
      ]),
    ).toEqual([
      'renderer/stage/a.ts → renderer/bench/b.ts: stage may not import from bench, which comes after it',
      'renderer/attic/c.ts: the room renderer/attic is on no floor',
    ]);
  });

  it('has a folder for every room that a floor lists', () => {
    for (const layer of layers) {
      const rooms = new Set(files.filter((each) => each.layer === layer).map(({ file }) => roomOf(file)));
      for (const room of floors[layer].flat()) expect(rooms, `${layer}/${room}`).toContain(room);
    }
  });

  it('keeps shared-core to libraries that only compute: no Node, DOM, React, Electron', () => {
    const allowed = new Set([
      'zod',
      'd3-array',
      'd3-scale',
      'd3-shape',
      'jstat',
      'ml-matrix',
      'immer',
      // a PDF and the widths of its letters are computed from bytes alone
      '@cantoo/pdf-lib',
      'fontkit',
      // messages and the types of their arguments
      'intl-messageformat',
      '@schummar/icu-type-parser',
    ]);
    const wrong = files
      .filter((each) => each.layer === 'shared-core')
      .flatMap(({ file, imports }) =>
        imports
          .filter((each) => !each.own && !allowed.has(each.target))
          .map((each) => `${file} → ${each.target}`),
      );
    expect(wrong).toEqual([]);
  });

  it('gives shared-core no clock and no chance', () => {
    const wrong = files
      .filter((each) => each.layer === 'shared-core')
      .filter(({ text }) => /Math\.random\(|Date\.now\(|new Date\(\)|performance\.now\(|crypto\./.test(text))
      .map((each) => each.file);
    expect(wrong).toEqual([]);
  });

  it('uses ipcMain only where the sender is checked', () => {
    const users = files.filter(({ text }) => /\bipcMain\b/.test(text)).map((each) => each.file);
    expect(users).toEqual(['electron/shell/handle-operations.ts']);
  });

  it('brings electron in only in the shell, and runs no shell', () => {
    const users = files.filter(({ imports }) => imports.some((each) => each.target === 'electron'));
    expect(users.filter((each) => !each.file.startsWith('electron/shell/')).map((each) => each.file)).toEqual(
      [],
    );
    expect(files.filter(({ text }) => /shell:\s*true|\bexecSync\b|\bexec\(\s*['"`]/.test(text))).toEqual([]);
  });

  it('has no folder or file for leftovers', () => {
    const wrong = files.filter(({ file }) => /(^|\/)(utils?|misc|helpers?|common)(\/|\.tsx?$)/.test(file));
    expect(wrong.map((each) => each.file)).toEqual([]);
  });
});
