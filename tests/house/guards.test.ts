import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { savingGuards } from '../bench/safety/saving-guards';
import { securityGuards } from '../bench/safety/security-guards';
import { root } from './import-walk';

it('has every guard that the bench takes out where its list says, with the test that would miss it', () => {
  const gone = [...securityGuards, ...savingGuards].filter(
    ({ file, is, test }) =>
      !existsSync(path.join(root, test)) || !readFileSync(path.join(root, file), 'utf8').includes(is),
  );
  expect(gone.map(({ name, file }) => `${file}: ${name}`)).toEqual([]);
});
