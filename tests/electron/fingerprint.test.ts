import { mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { fingerprintOf, KnownFingerprints } from '../../electron/host/fingerprint';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-fingerprint-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

it('a film replaced by one of the same size and date is seen, though its fingerprint was known', async () => {
  const file = path.join(folder, 'film.mp4');
  const fingerprints = new KnownFingerprints();
  await writeFile(file, 'first film');
  await utimes(file, 1_000_000, 1_000_000);
  const first = await fingerprints.of(file);
  expect(await fingerprints.of(file)).toBe(first);
  await writeFile(file, 'other film');
  await utimes(file, 1_000_000, 1_000_000);
  const second = await fingerprints.of(file);
  expect(second).toEqual(await fingerprintOf(file));
  expect(second.edgesSha256).not.toBe(first.edgesSha256);
});

it('a film that is gone is not answered from memory', async () => {
  const file = path.join(folder, 'film.mp4');
  const fingerprints = new KnownFingerprints();
  await writeFile(file, 'a film');
  await fingerprints.of(file);
  await rm(file);
  await expect(fingerprints.of(file)).rejects.toMatchObject({ code: 'ENOENT' });
});
