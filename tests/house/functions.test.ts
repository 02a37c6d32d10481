import { describe, expect, it } from 'vitest';
import { functionsOf } from './functions';
import { sourceFiles } from './import-walk';

/** Longer ones do more than one thing; a component's markup takes room of its own. Our bounds. */
const most = { function: 100, component: 150 } as const;

/** Still to be split. One that is short enough by now fails the test until it is taken off; none is ever added. */
const left = [
  'shared-core/measures/body/posture-summary.ts: postureSummary',
  'renderer/video/decoder-pump.ts: createDecoderPump',
  'renderer/video/open-frame-source.ts: createFrameSource',
];

describe('functions', () => {
  it('are short enough to be read at a glance', () => {
    const long = sourceFiles().flatMap(({ file, text }) =>
      functionsOf(file, text)
        .filter(({ kind, lines }) => lines > most[kind])
        .map(({ name, lines }) => ({ name: `${file}: ${name}`, lines })),
    );
    expect(long.filter(({ name }) => !left.includes(name))).toEqual([]);
    expect(left.filter((name) => !long.some((each) => each.name === name))).toEqual([]);
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
