import { Writable } from 'node:stream';
import { describe, expect, it } from 'vitest';

const commands = new URL('../../../electron/commands/starting/', import.meta.url);
const { readOptions } = (await import(new URL('read-options.mjs', commands).href)) as {
  readOptions(args: string[]): {
    open?: boolean;
    getElectron?: boolean;
    port?: number;
    library?: string;
    unknown?: string;
  };
};
const { fetchProgress } = (await import(new URL('fetch-progress.mjs', commands).href)) as {
  fetchProgress(out: Writable & { isTTY?: boolean }): {
    told(progress: { doing: string; received?: number; total?: number | null }): void;
    end(): void;
  };
};

describe('the start command’s arguments', () => {
  it('are read in any order', () => {
    expect(readOptions(['--library', 'a b', '--get-electron', '--port', '0', '--no-open'])).toEqual({
      open: false,
      getElectron: true,
      port: 0,
      library: 'a b',
    });
    expect(readOptions([])).toEqual({ open: true, getElectron: false });
  });

  it.each([
    ['--nothing'],
    ['a'],
    ['--port'],
    ['--port', '70000'],
    ['--port', 'x'],
    ['--library', '--no-open'],
  ])('are refused with the usage: %s %s', (...args) => {
    expect(readOptions(args.filter((each) => each !== undefined)).unknown).toMatch(/\nUsage: npm start/);
  });
});

describe('the download’s progress', () => {
  const shown = (isTTY: boolean) => {
    let text = '';
    const out = Object.assign(
      new Writable({
        write(chunk: Buffer, _encoding, done) {
          text += chunk.toString();
          done();
        },
      }),
      { isTTY },
    );
    const progress = fetchProgress(out);
    for (let received = 0; received <= 118e6; received += 1e6)
      progress.told({ doing: 'receiving', received, total: 118e6 });
    progress.told({ doing: 'received', received: 118e6, total: 118e6 });
    progress.end();
    return text;
  };

  it('changes one line on a terminal, and writes a line each tenth elsewhere', () => {
    const terminal = shown(true);
    expect(terminal.split('\n')).toHaveLength(2);
    expect(terminal).toContain('fetching Electron’s program: 59 of 118 MB, 50 %');
    const lines = shown(false).trim().split('\n');
    expect(lines).toHaveLength(12);
    expect(lines.at(-1)).toBe('submark: checking and unpacking Electron’s program …');
  });

  it('shows what came where the server doesn’t say how much there is', () => {
    let text = '';
    const out = Object.assign(new Writable(), { isTTY: true, write: (words: string) => (text += words) });
    fetchProgress(out as never).told({ doing: 'receiving', received: 3e6, total: null });
    expect(text).toMatch(/: 3 MB$/);
  });
});
