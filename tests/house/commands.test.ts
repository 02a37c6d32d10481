import { describe, expect, it } from 'vitest';
import { type SourceFile, sourceFiles } from './import-walk';

const renderer = sourceFiles().filter(({ layer }) => layer === 'renderer');

const found = (files: readonly SourceFile[], form: RegExp): readonly string[] =>
  files.flatMap(({ file, text }) =>
    [...text.matchAll(form)].map((match) => `${file}: ${match[1] ?? match[0]}`),
  );

/** A key in brackets at the end of a text: "Undo (Ctrl Z)", "Next mark (↓)". */
const keyInWords =
  /((?:title|tip)\s*[=:]\s*[^\n>]*\((?:(?:Ctrl|Shift|Alt|⌘|⇧|\$mod) ?\+? ?)*(?:[A-Z0-9←→↑↓?,.+−]|Esc|Escape|Space|Enter|Delete|Backspace|Home|End)\)['"`])/g;

/** Names of commands: `id: 'play'`, or the first words handed to what makes one: `view('lock', 'Lock …'`. */
const commandNames = new Set(
  renderer.flatMap(({ text }) =>
    [
      ...text.matchAll(/\bid: ['`]([\w-]+)(?:\$\{|['`])/g),
      ...text.matchAll(/\b(?:view|step|look|keep|command)\(\s*['`]([\w-]+)(?:\$\{|['`])/g),
    ].map((match) => match[1] ?? ''),
  ),
);

/** The same at the end of a message of the catalogue. */
const keyInMessage =
  /: (['"`][^\n]*\((?:(?:Ctrl|Shift|Alt|⌘|⇧) ?\+? ?)*(?:[A-Z0-9←→↑↓?,.+−[\]]|Esc|Escape|Space|Enter|Delete|Backspace|Home|End)\)['"`],)$/gm;

describe('commands', () => {
  it('tell their key themselves: no tooltip has one written by hand', () => {
    expect(found(renderer, keyInWords)).toEqual([]);
    const catalogue = sourceFiles().filter(({ file }) => file.startsWith('shared-core/words/'));
    expect(found(catalogue, keyInMessage)).toEqual([]);
  });

  it('tell it on caps too: no cap in screens or catalogue has a key written by hand', () => {
    const all = sourceFiles();
    expect(found(all, /(<kbd>(?:\{\s*['"`]|[^{<]))/g)).toEqual([]);
    expect(found(all, /(<kbd>\{)/g).length).toBeGreaterThan(20);
  });

  it('would be caught with a key written by hand', () => {
    const by = (text: string): SourceFile => ({ file: 'a.tsx', layer: 'renderer', text, imports: [] });
    for (const text of [
      'title="Next mark (↓)"',
      'title={`Undo: that (Ctrl Z)`}',
      "title: 'Lines that are straight (5)'",
      'title="Close (Esc)"',
      'title="Save a video (Shift V)"',
    ])
      expect(found([by(text)], keyInWords), text).toHaveLength(1);
    expect(found([by("  from: 'Stretch of {letter} begins here ([)',")], keyInMessage)).toHaveLength(1);
    expect(found([by('title="SD of the differences ÷ √2 (Hopkins 2000)"')], keyInWords)).toEqual([]);
  });

  it('are there for every tooltip and button that names one', () => {
    const named = renderer.flatMap(({ file, text }) =>
      [...text.matchAll(/(?:\b(?:tip|keyOf)\(\s*['`]|<CommandButton command=")([\w-]+)/g)].map((match) => ({
        file,
        name: match[1] ?? '',
      })),
    );
    expect(named.length).toBeGreaterThan(90);
    expect(named.filter(({ name }) => !commandNames.has(name))).toEqual([]);
  });

  it('are called, not clicked through the page', () => {
    expect(found(renderer, /(querySelector[^;]*\.click\(\))/g)).toEqual([]);
  });
});
