import { copyFile, mkdtemp, readdir, readFile, rm, stat, truncate } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { placeOfFrame } from '#core/compare/pair-clock';
import { pairPartOf } from '#core/compare/pair-part';
import { parseSwim } from '#core/swim-file/swim-file';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import type { VideoPlan } from '#core/video/video-plan';
import { findMediaTool } from '#electron/media/find-media-tool';
import { exportVideo, type VideoSource } from '#electron/video/export-video';
import { readPictureNumber } from '../../sample-clips/picture-number';

const samples = fileURLToPath(new URL('../../sample-clips/library/swims/', import.meta.url));
const knowledge = { swimmer: null, markingError: null };
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-video-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function sample(name: string): Promise<VideoSource> {
  const home = path.join(samples, `sample-${name}`);
  const parsed = parseSwim(await readFile(path.join(home, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  const { place } = parsed.value.clip;
  if (place.kind !== 'inside') throw new Error('samples hold their clips');
  return { swim: parsed.value, clip: path.join(home, place.name), knowledge };
}

const lastFrame = ({ swim }: VideoSource): number => tableFromRecord(swim.clip.frameTimes).starts.length - 1;

function planOf(
  sources: readonly VideoSource[],
  change: Partial<VideoPlan>,
  frames: readonly number[],
): VideoPlan {
  return {
    sides: sources.map((source, index) => ({
      swimId: source.swim.id,
      stretch: { first: 0, last: lastFrame(source) },
      lock: { on: 'frame', frame: frames[index] ?? 0 },
      frame: frames[index] ?? 0,
      mirrored: false,
      title: 'A swim',
    })),
    mode: 'time',
    lead: 0,
    seconds: null,
    slow: 1,
    rate: 30,
    width: 1280,
    sameLength: false,
    keepInView: false,
    lay: null,
    // the sample pictures' own numbers must stay in sight
    show: { bodyLine: true, angles: false, score: true, flashes: false, facts: false },
    caption: '',
    sound: false,
    name: 'video',
    ...change,
  };
}

const make = (sources: readonly VideoSource[], plan: VideoPlan, signal = new AbortController().signal) =>
  exportVideo({ sources, plan, folder, tempId: plan.name, signal, report: () => undefined });

/** The numbers in the pictures of a part of a video, as another decoder shows them. */
async function numbersIn(
  file: string,
  crop: string,
  width: number,
  height: number,
): Promise<(number | null)[]> {
  const ffmpeg = await findMediaTool('ffmpeg');
  const filter = `crop=${crop},scale=${width}:${height}`;
  const { stdout } = await execa(
    ffmpeg?.path ?? 'ffmpeg',
    ['-v', 'error', '-i', file, '-vf', filter, '-pix_fmt', 'rgba', '-f', 'rawvideo', 'pipe:1'],
    { encoding: 'buffer', stripFinalNewline: false, maxBuffer: 2e9 },
  );
  const size = width * height * 4;
  return Array.from({ length: Math.floor(stdout.length / size) }, (_, n) =>
    readPictureNumber(stdout.subarray(n * size, (n + 1) * size), width, height),
  );
}

async function probed(file: string): Promise<Record<string, unknown>[]> {
  const tool = await findMediaTool('ffprobe');
  const { stdout } = await execa(tool?.path ?? 'ffprobe', [
    ...['-v', 'error', '-show_streams', '-of', 'json', file],
  ]);
  return (JSON.parse(stdout) as { streams: Record<string, unknown>[] }).streams;
}

const hasTool = (await findMediaTool('ffmpeg')) !== null && (await findMediaTool('ffprobe')) !== null;

describe.skipIf(!hasTool)('a video', () => {
  it('of one swim holds the frames of the stage, picture by picture, slowed as asked', async () => {
    const swim = await sample('butterfly-together');
    // 60 a second, begun in the middle of a group, at half speed and 30 a second: every frame at a quarter of the rate
    const made = await make([swim], planOf([swim], { seconds: 0.25, slow: 2, name: 'one' }, [101]));
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    expect(made.value).toMatchObject({ name: 'one.mp4', pictures: 16, format: 'mp4' });
    const [stream, ...others] = await probed(made.value.path);
    expect(others).toEqual([]);
    expect(stream).toMatchObject({ codec_name: 'h264', width: 1280, pix_fmt: 'yuv420p', nb_frames: '16' });
    expect(stream?.r_frame_rate).toBe('30/1');
    const numbers = await numbersIn(made.value.path, '1280:720:0:0', 1280, 720);
    expect(numbers).toEqual(Array.from({ length: 16 }, (_, n) => 101 + n));
  });

  it('of two swims holds both in lock by the one lookup rule, at different rates, and never replaces another', async () => {
    const sources = [await sample('butterfly-late-kick'), await sample('fins-slow-motion')];
    const [a, b] = sources;
    if (!a || !b) throw new Error('two samples');
    const frames = [40, 90];
    const plan = planOf(sources, { seconds: 0.4, slow: 1, rate: 30, name: 'one' }, frames);
    const made = await make(sources, plan);
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    expect(made.value.name).toBe('one 2.mp4');
    // both samples are 1280 × 720: half as wide beside each other
    const left = await numbersIn(made.value.path, '640:360:0:0', 1280, 720);
    const right = await numbersIn(made.value.path, '640:360:640:0', 1280, 720);
    const expected = sources.map((source, index) => {
      const { clip } = source.swim;
      const clock = { table: tableFromRecord(clip.frameTimes), slowdown: clip.slowdown.factor };
      const frame = frames[index] ?? 0;
      const stretch = { first: 0, last: lastFrame(source) };
      const { side } = pairPartOf(source.swim, knowledge, clock, stretch, { on: 'frame', frame });
      return Array.from({ length: 13 }, (_, n) => {
        // by looking at every start
        let found = 0;
        for (let f = 0; f <= stretch.last; f++) if (placeOfFrame(side, 'time', f) <= n / 30 + 1e-6) found = f;
        return found;
      });
    });
    expect(left).toEqual(expected[0]);
    expect(right).toEqual(expected[1]);
  });

  it('is not left half made when it is cancelled', async () => {
    const swim = await sample('butterfly-together');
    const stop = new AbortController();
    const before = await readdir(folder);
    const making = exportVideo({
      sources: [swim],
      plan: planOf([swim], { name: 'never', slow: 8 }, [0]),
      folder,
      tempId: 'never',
      signal: stop.signal,
      report: (share) => {
        if ((share ?? 0) > 0.02) stop.abort();
      },
    });
    expect(await making).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await readdir(folder)).toEqual(before);
  });

  it('says so when the film ends before its frames do, and leaves nothing', async () => {
    const swim = await sample('butterfly-together');
    const clip = path.join(folder, 'cut.mp4');
    await copyFile(swim.clip, clip);
    const { size } = await stat(clip);
    await truncate(clip, Math.round(size * 0.6));
    const cut = { ...swim, clip };
    const made = await make([cut], planOf([cut], { name: 'cut video' }, [0]));
    expect(made.ok).toBe(false);
    expect((await readdir(folder)).filter((name) => /cut video|part/.test(name))).toEqual([]);
  });

  it('is made by the command line too, and never over another one', async () => {
    const out = path.join(folder, 'made by command');
    const command = fileURLToPath(new URL('../../electron/commands/export.mjs', import.meta.url));
    const asked = ['--from', '0', '--to', '0.1', '--slow', '2', '--no-words', '--no-events', '--out', out];
    const run = () =>
      execa(process.execPath, [command, 'video', path.join(samples, 'sample-butterfly-together'), ...asked], {
        reject: false,
      });
    const made = await run();
    expect(made.exitCode).toBe(0);
    expect(path.dirname(made.stdout)).toBe(out);
    expect(await numbersIn(made.stdout, '1280:720:0:0', 1280, 720)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    const again = await run();
    expect([again.exitCode, again.stdout]).toEqual([1, '']);
    expect(again.stderr).toContain('--replace');
    expect(await readdir(out)).toEqual([path.basename(made.stdout)]);
    // two starts of the command beside the making: longer on a busy machine than the other tests
  }, 120_000);
});
