import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { guards } from '../bench/safety/guard-list';
import { walls } from '../bench/safety/wall-list';
import { root } from './import-walk';

it('has every wall and guard that the bench takes out where its list says, with the test that would miss it', () => {
  const gone = [...walls, ...guards].filter(
    ({ file, is, test }) =>
      !existsSync(path.join(root, test)) || !readFileSync(path.join(root, file), 'utf8').includes(is),
  );
  expect(gone.map(({ name, file }) => `${file}: ${name}`)).toEqual([]);
});
