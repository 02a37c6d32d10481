import type { FrameRange } from '#core/timeline/frame-range';
import { createReadStream } from 'node:fs';
import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { execa } from 'execa';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { JobLook } from '#core/host-contract/operations/job-operations';
import { type HostFilm, hostFilmSchema } from '#core/host-contract/operations/media-operations';
import { makePieces, pieceFile } from '#electron/media/copy-pieces';
import { knowFilm } from '#electron/media/known-film';
import { decodeIndependently } from '#tests/browser/harness/independent-decode';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must } from './a-host';
import { fieldNumbers } from './field-numbers';
import { makeNumberClip } from './number-clips';

let clips: string;
let hevc: string;
let interlaced: string;
let motionJpeg: string;
beforeAll(async () => {
  clips = await mkdtemp(path.join(tmpdir(), 'submark-copies-'));
  // an odd name on purpose: quotes, a leading dash, an emoji
  hevc = path.join(clips, `-i "it's" 🏊 .mp4`);
  await makeNumberClip(`file:${hevc}`, {
    rate: 30,
    pictures: 60,
    after: "settb=1/90000,setpts='(N/30+0.012*sin(N*1.7)+0.4*gt(N,30))/TB'",
    options: [
      ...['-enc_time_base', '1:90000', '-video_track_timescale', '90000'],
      ...['-c:v', 'libx265', '-x265-params', 'log-level=error:keyint=24:bframes=4:open-gop=1'],
    ],
  });
  interlaced = path.join(clips, 'camcorder.ts');
  await makeNumberClip(interlaced, {
    rate: 50,
    pictures: 80,
    after: 'interlace=scan=tff:lowpass=off',
    options: ['-flags', '+ilme+ildct', '-c:v', 'mpeg2video', '-q:v', '2', '-bf', '2'],
  });
  motionJpeg = path.join(clips, 'old.avi');
  await makeNumberClip(motionJpeg, { rate: 25, pictures: 50, options: ['-c:v', 'mjpeg', '-q:v', '3'] });
});
afterAll(() => rm(clips, { recursive: true, force: true }));

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost({ copiesLimitBytes: 1e9 });
});
afterEach(async () => {
  await under.host.close();
  await under.close();
});

const ended = (jobId: string): Promise<JobLook> =>
  vi.waitFor(
    async () => {
      const look = must(await under.ask('job/look', { jobId }));
      if (look.state === 'running') throw new Error('still running');
      return look;
    },
    { timeout: 60_000, interval: 50 },
  );

async function arrive(file: string): Promise<string> {
  const body = Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array>;
  return must(await under.host.clips.arrive(path.basename(file), body)).clipId;
}

async function lookAt(file: string): Promise<{ clipId: string; film: HostFilm }> {
  const clipId = await arrive(file);
  const look = await ended(must(await under.ask('media/look', { clipId, track: null })).jobId);
  if (look.state !== 'done') throw new Error(JSON.stringify(look));
  return { clipId, film: hostFilmSchema.parse(look.result) };
}

async function swimOf(file: string, id = 'swim-1', known?: HostFilm): Promise<HostFilm> {
  const { clipId, film } = known ? { clipId: await arrive(file), film: known } : await lookAt(file);
  const { container, codec, width, height, fields, frameTimes } = film;
  const swim = aSwim({ id });
  must(
    await under.ask('swim/create', {
      swim: { ...swim, clip: { ...swim.clip, container, codec, width, height, fields, frameTimes } },
      clipId,
    }),
  );
  return film;
}

async function copyOf(id: string): Promise<string> {
  const look = await ended(must(await under.ask('copy/make', { id })).jobId);
  if (look.state !== 'done') throw new Error(JSON.stringify(look));
  const file = await under.host.copies.fileOf(id);
  if (!file) throw new Error('no copy is there');
  return file;
}
const upTo = (count: number): number[] => Array.from({ length: count }, (_, n) => n);
const held = (): Promise<string[]> => readdir(path.join(under.library, '.cache', 'copies'));

describe('a working copy', () => {
  it('shows frame n of variable-rate HEVC with leaning groups as its frame n, from a file with an odd name', async () => {
    const film = await swimOf(hevc);
    expect(film).toMatchObject({ codec: 'hevc', container: 'MP4', fields: false, width: 640, height: 360 });
    expect(film.picture).not.toBeNull();
    const copy = await copyOf('swim-1');
    expect(await decodeIndependently(copy)).toEqual(upTo(60));
    // until then, stills of the very frames; never one under another's number
    const around = { first: 20, last: 25 };
    const { stills } = must(await under.ask('copy/stills', { id: 'swim-1', around, asked: 22 }));
    expect(stills.map(({ frame }) => frame)).toEqual([20, 21, 22, 23, 24, 25]);
    for (const still of [stills[0], stills[5]])
      expect(await numberInJpeg(still?.jpeg ?? '')).toBe(still?.frame);
    expect(await under.ask('copy/stills', { id: 'swim-1', around, asked: 40 })).toMatchObject({
      ok: false,
      error: { code: 'bad-request' },
    });
    expect(must(await under.ask('copy/watch', { id: 'swim-1', frame: 3 }))).toEqual({ pieces: [] });
    // the same job again is done at once
    expect(await copyOf('swim-1')).toBe(copy);
  });

  it('shows every field of an interlaced transport stream as a frame of its own, in the order they were filmed', async () => {
    const film = await swimOf(interlaced);
    expect(film).toMatchObject({ codec: 'mpeg2video', container: 'MPEG-TS', fields: true });
    const { ticksPerSecond, gaps } = film.frameTimes;
    expect([gaps, ticksPerSecond]).toEqual([[[3600, 80]], 180_000]);
    expect(await fieldNumbers(await copyOf('swim-1'))).toEqual(upTo(80));
  });

  it('is made from where the coach looks, in pieces whose frames are those of the film, and goes where the coach goes', async () => {
    const frameTimes = { ticksPerSecond: 1, firstTick: 0, gaps: [] };
    const anyClip = { frameTimes, originalName: 'film', track: null };
    for (const { file, fields, count, numbers } of [
      { file: hevc, fields: false, count: 60, numbers: decodeIndependently },
      { file: interlaced, fields: true, count: 80, numbers: fieldNumbers },
    ]) {
      const known = must(await knowFilm(file, { ...anyClip, fields }, {}));
      let looksAt = 5;
      const seen: FrameRange[] = [];
      const made = await makePieces({
        ...{ known, table: known.table, near: 24, far: 48, timing: ['-fps_mode', 'passthrough'] },
        folder: path.join(clips, `pieces-${count}`),
        focus: {
          frame: () => looksAt,
          onMove(hear) {
            // while the first piece is begun the coach goes to where nothing is
            const going = setTimeout(() => {
              looksAt = 50;
              hear();
            });
            return () => clearTimeout(going);
          },
        },
        signal: new AbortController().signal,
        onFrames: () => undefined,
        onMade: (piece) => seen.push(piece),
      });
      expect(seen).toEqual(
        fields
          ? [
              { first: 44, last: 79 },
              { first: 0, last: 43 },
            ]
          : [
              { first: 36, last: 59 },
              { first: 0, last: 35 },
            ],
      );
      const pieces = must(made);
      for (const { first, last } of pieces)
        expect(await numbers(pieceFile(path.join(clips, `pieces-${count}`), first))).toEqual(
          upTo(count).slice(first, last + 1),
        );
      expect(pieces.flatMap(({ first, last }) => upTo(count).slice(first, last + 1))).toEqual(upTo(count));
    }
  }, 120_000);

  it('takes the pictures of MJPEG over without coding them again', async () => {
    const film = await swimOf(motionJpeg);
    expect(film).toMatchObject({ codec: 'mjpeg', container: 'AVI', fields: false });
    const copy = await copyOf('swim-1');
    const sums = async (file: string): Promise<string[]> =>
      (await execa('ffmpeg', ['-v', 'error', '-i', file, '-f', 'framemd5', '-'])).stdout
        .split('\n')
        .flatMap((line) => /, ([0-9a-f]{32})$/.exec(line)?.[1] ?? []);
    expect(await sums(copy)).toEqual(await sums(motionJpeg));
    expect(await sums(copy)).toHaveLength(50);
  });

  it('follows an edit list that shows a stretch twice', async () => {
    const plain = path.join(clips, 'plain.mp4');
    const twice = path.join(clips, 'twice.mp4');
    const options = ['-c:v', 'libx264', '-preset', 'ultrafast', '-g', '15', '-bf', '2'];
    await makeNumberClip(plain, { rate: 30, pictures: 45, options });
    await execa('ffmpeg', ['-v', 'error', '-y', '-itsoffset', '9', '-i', plain, '-c', 'copy', twice]);
    // two edits, nothing for 9 s and then the film: the first is made one second of the film instead
    const bytes = await readFile(twice);
    const list = bytes.indexOf('elst') + 12;
    bytes.writeUInt32BE(1000, list);
    bytes.writeInt32BE(bytes.readInt32BE(list + 16), list + 4);
    await writeFile(twice, bytes);
    expect((await swimOf(twice)).frameTimes.gaps).toEqual([[512, 75]]);
    expect(await decodeIndependently(await copyOf('swim-1'))).toEqual([...upTo(30), ...upTo(45)]);
  });

  it('is refused when its frames are not the original’s, one for one', async () => {
    const { clipId, film } = await lookAt(hevc);
    const [first, ...rest] = film.frameTimes.gaps;
    // as if the marks had been made on a table with one frame 1/90000 s later
    const frameTimes = {
      ...film.frameTimes,
      gaps: [[(first?.[0] ?? 0) + 1, first?.[1] ?? 1] as const, ...rest],
    };
    const swim = aSwim();
    must(await under.ask('swim/create', { swim: { ...swim, clip: { ...swim.clip, frameTimes } }, clipId }));
    const look = await ended(must(await under.ask('copy/make', { id: 'swim-1' })).jobId);
    expect(look).toMatchObject({ state: 'failed', error: { code: 'copy-differs' } });
    expect(await held()).toEqual([]);
  });

  it('is never made from a clip that was exchanged', async () => {
    await swimOf(motionJpeg);
    const folder = path.join(under.library, 'swims', 'swim-1');
    await writeFile(path.join(folder, 'old.avi'), await readFile(interlaced));
    const look = await ended(must(await under.ask('copy/make', { id: 'swim-1' })).jobId);
    expect(look).toMatchObject({ state: 'failed', error: { code: 'clip-changed' } });
    expect(await under.ask('copy/look', { id: 'swim-1' })).toMatchObject({ value: { state: 'none' } });
  });

  it('leaves nothing behind when it is stopped, neither a file nor a program at work', async () => {
    const long = path.join(clips, 'long.mp4');
    await makeNumberClip(long, {
      rate: 60,
      pictures: 900,
      options: ['-c:v', 'mpeg4', '-q:v', '8'],
    });
    await swimOf(long);
    const { jobId } = must(await under.ask('copy/make', { id: 'swim-1' }));
    expect(await under.ask('copy/look', { id: 'swim-1' })).toMatchObject({
      value: { state: 'making', jobId },
    });
    await vi.waitFor(async () => expect(await held()).toHaveLength(1), { timeout: 60_000 });
    must(await under.ask('job/cancel', { jobId }));
    expect(await ended(jobId)).toEqual({ state: 'cancelled' });
    expect(await held()).toEqual([]);
    if (process.platform === 'linux') expect(await commandLines()).not.toContain(under.library);
  });

  it('goes when the copies are larger than their limit, the least lately used first', async () => {
    const film = await swimOf(motionJpeg, 'swim-a');
    const one = (await stat(await copyOf('swim-a'))).size;
    await under.host.close();
    await under.close();
    under = await aHost({ copiesLimitBytes: Math.round(one * 2.5) });
    for (const id of ['swim-a', 'swim-b', 'swim-c']) {
      await swimOf(motionJpeg, id, film);
      await copyOf(id);
      // the clock of some disks counts whole milliseconds
      await new Promise((resolve) => setTimeout(resolve, 15));
      if (id === 'swim-b') await under.host.copies.fileOf('swim-a');
    }
    expect((await held()).map((name) => name.split('.')[0]).sort()).toEqual(['swim-a', 'swim-c']);
    // the coach's own limit rules at once, is kept over a restart, and anything else is no limit
    expect(must(await under.ask('copy/room', {}))).toMatchObject({
      files: 2,
      limitBytes: Math.round(one * 2.5),
    });
    await under.host.copies.fileOf('swim-a');
    expect(must(await under.ask('copy/limit', { limitBytes: Math.round(one * 1.5) }))).toMatchObject({
      files: 1,
    });
    expect((await held()).map((name) => name.split('.')[0])).toEqual(['swim-a']);
    expect(JSON.parse(await readFile(path.join(under.library, 'settings.json'), 'utf8'))).toMatchObject({
      copiesLimitBytes: Math.round(one * 1.5),
    });
    expect(await under.ask('copy/limit', { limitBytes: -1 })).toMatchObject({ ok: false });
    await writeFile(path.join(under.library, 'settings.json'), '{"copiesLimitBytes": "all"}');
    expect(must(await under.ask('copy/room', {}))).toMatchObject({ limitBytes: Math.round(one * 2.5) });
    // emptying the cache takes them all, and one can be made again
    must(await under.ask('storage/clean', { what: 'cache' }));
    expect(await copyOf('swim-a')).toContain('swim-a');
  });
});

async function numberInJpeg(jpeg: string): Promise<number | undefined> {
  const file = path.join(clips, 'still.jpg');
  await writeFile(file, Buffer.from(jpeg, 'base64'));
  return (await decodeIndependently(file))?.[0] ?? undefined;
}

/** Command lines of every program at work here. */
async function commandLines(): Promise<string> {
  const all = (await readdir('/proc')).filter((name) => /^\d+$/.test(name));
  const lines = await Promise.all(
    all.map((pid) => readFile(`/proc/${pid}/cmdline`, 'latin1').catch(() => '')),
  );
  return lines.filter((line) => line.includes('ffmpeg')).join('\n');
}
