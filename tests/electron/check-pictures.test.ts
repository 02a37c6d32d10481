import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { checkPictures } from '#electron/media/check-pictures';
import { makeNumberClip } from './number-clips';

let folder: string;
const at = (name: string): string => path.join(folder, name);
const x264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '30', '-bf', '2'];
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-check-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const check = (file: string, signal = new AbortController().signal) =>
  checkPictures({ file, track: 1, frames: 60, fields: false, signal, report: () => undefined });

it('finds nothing wrong with whole film', async () => {
  await makeNumberClip(at('whole.mp4'), { rate: 30, pictures: 60, options: x264 });
  expect(await check(at('whole.mp4'))).toEqual({ ok: true, value: { patched: 0, missing: 0 } });
});

it('counts pictures that a decoder patched up', async () => {
  const bytes = await readFile(at('whole.mp4'));
  const media = bytes.indexOf('mdat', 0, 'latin1');
  const middle = media + Math.round((bytes.length - media) / 2);
  for (let n = 0; n < 1500; n++) bytes[middle + n] = (n * 37) & 0xff;
  await writeFile(at('flipped.mp4'), bytes);
  const flipped = await check(at('flipped.mp4'));
  expect(flipped.ok && flipped.value.patched + flipped.value.missing).toBeGreaterThan(0);
  expect(flipped.ok && flipped.value.patched + flipped.value.missing).toBeLessThan(10);
});

it('says that something is broken where a decoder complains without saying of which picture', async () => {
  await makeNumberClip(at('ffv1.mkv'), { rate: 30, pictures: 60, options: ['-c:v', 'ffv1', '-level', '3'] });
  const bytes = await readFile(at('ffv1.mkv'));
  bytes.fill(0x55, Math.round(bytes.length / 2), Math.round(bytes.length / 2) + 60);
  await writeFile(at('crc.mkv'), bytes);
  expect(await check(at('crc.mkv'))).toEqual({ ok: true, value: { patched: 1, missing: 0 } });
});

it('counts pictures that never come out of a decoder', async () => {
  const vp9 = ['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8', '-g', '30'];
  await makeNumberClip(at('vp9.mkv'), { rate: 30, pictures: 60, options: vp9 });
  const bytes = await readFile(at('vp9.mkv'));
  bytes.fill(0xff, Math.round(bytes.length * 0.6), Math.round(bytes.length * 0.6) + 4000);
  await writeFile(at('gaps.mkv'), bytes);
  const gaps = await check(at('gaps.mkv'));
  expect(gaps.ok && gaps.value.missing).toBeGreaterThan(0);
});

it('stops when it is told to', async () => {
  const stop = new AbortController();
  stop.abort();
  const stopped = await check(at('whole.mp4'), stop.signal);
  expect(!stopped.ok && stopped.error.code).toBe('cancelled');
});
