import { expect, it } from 'vitest';
import { brokenReport } from '../../../renderer/app/broken-report';

const agent = 'Mozilla/5.0 (X11; Linux x86_64)';
const failing = (error: Error, stack: string): string => {
  error.stack = stack;
  return brokenReport({ error, screen: 'bench', agent });
};

it('tells which error, where in the program, on which screen', () => {
  const report = failing(
    new TypeError('undefined is not a function'),
    'TypeError: undefined is not a function\n    at draw (http://127.0.0.1:4321/assets/bench-1a2b.js:10:20)\n    at submark://app/assets/index.js:1:2',
  );
  expect(report).toContain('bench screen');
  expect(report).toContain('TypeError: undefined is not a function');
  expect(report).toContain('at bench-1a2b.js:10:20');
  expect(report).toContain('at index.js:1:2');
});

it('holds no name, id, path, address or quoted word, wherever they stand in the error', () => {
  const report = failing(
    new Error('no swim of Mara Lindt in /home/coach/film'),
    'Error: no swim of Mara Lindt in /home/coach/film\n    at open (/home/coach/app/bench.ts:3:4)\n    at x (http://127.0.0.1:1/open/secret-key/a.js:1:1)',
  );
  for (const secret of ['Mara', 'Lindt', 'home', 'coach', 'secret', '127.0.0.1'])
    expect(report).not.toContain(secret);
  const quoted = failing(new TypeError('"Mara Lindt" is not an object (\'swim-7\')'), '');
  expect(quoted).not.toMatch(/Mara|swim-7/);
  const named = new Error('x');
  named.name = 'Mara Lindt is here';
  expect(failing(named, '')).not.toContain('Mara');
});

it('can be made of anything that was thrown', () => {
  for (const error of [null, undefined, 'Mara Lindt', { swimmer: 'Mara Lindt' }, 7])
    expect(brokenReport({ error, screen: 'sets/mara', agent })).not.toContain('Mara');
});
