import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { lookAtFilm } from '#electron/media/look-at-film';
import { decodeIndependently } from '#tests/browser/harness/independent-decode';
import { must } from './a-host';
import { makeNumberClip } from './number-clips';

let folder: string;
const at = (name: string): string => path.join(folder, name);
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-cut-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function cut(name: string, share: number): Promise<string> {
  const whole = await readFile(at(name));
  await writeFile(at(`cut-${name}`), whole.subarray(0, Math.round(whole.length * share)));
  return at(`cut-${name}`);
}

async function look(file: string): Promise<{ frames: number; lost: number }> {
  const signal = new AbortController().signal;
  const film = must(
    await lookAtFilm({ file, track: null, scratch: at('picture.jpg'), signal, report: () => undefined }),
  );
  return { frames: tableFromRecord(film.frameTimes).starts.length, lost: film.lostPictures };
}

const hevc = ['-c:v', 'libx265', '-x265-params', 'log-level=error:keyint=12:bframes=2'];

it('takes of an MP4 that breaks off the frames a decoder gives, and says what is missing', async () => {
  const options = [...hevc, '-movflags', 'faststart'];
  await makeNumberClip(at('phone.mp4'), { rate: 30, pictures: 90, options });
  expect(await look(at('phone.mp4'))).toEqual({ frames: 90, lost: 0 });
  // the last picture in the file is there in part only, and shown before the one it was coded behind
  const broken = await cut('phone.mp4', 0.6);
  const shown = (await decodeIndependently(broken)) ?? [];
  const whole = shown.findIndex((number, n) => number !== n);
  const frames = whole < 0 ? shown.length : whole;
  expect(await look(broken)).toEqual({ frames, lost: 90 - frames });
});
