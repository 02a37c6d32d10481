import { describe, expect, it } from 'vitest';
import { functionsOf } from './functions';
import { sourceFiles } from './import-walk';

/** Longer ones do more than one thing; a component's markup takes room of its own. Our bounds. */
const most = { function: 100, component: 150 } as const;

describe('functions', () => {
  it('are short enough to be read at a glance', () => {
    const long = sourceFiles()
      .filter(({ text }) => text.split('\n').length > most.function)
      .flatMap(({ file, text }) =>
        functionsOf(file, text)
          .filter(({ kind, lines }) => lines > most[kind])
          .map(({ name, lines }) => ({ name: `${file}: ${name}`, lines })),
      );
    expect(long).toEqual([]);
  });

  it('are counted by the parser, with their names', () => {
    const text = [
      'export const Page = memo(function Page() {',
      '  const step = (by: number): void => {',
      '    go(by);',
      '  };',
      '  return <p onClick={() => step(1)} />;',
      '});',
      'export function plain() {',
      '  return { run() { return 1; } };',
      '}',
    ].join('\n');
    expect(functionsOf('a.tsx', text)).toEqual([
      { name: 'Page', lines: 6, kind: 'component' },
      { name: 'step', lines: 3, kind: 'function' },
      { name: 'unnamed', lines: 1, kind: 'function' },
      { name: 'plain', lines: 3, kind: 'function' },
      { name: 'run', lines: 1, kind: 'function' },
    ]);
  });
});
