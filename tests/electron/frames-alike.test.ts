import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordFromTable } from '#core/timeline/frame-times-record';
import { findMediaTool } from '#electron/media/find-media-tool';
import { probeFrameTimes } from '#electron/media/probe-frame-times';
import { probeTracks } from '#electron/media/probe-tracks';
import { readPictures } from '#electron/media/read-pictures';
import { exportVideo } from '#electron/video/export-video';
import { decodeIndependently } from '#tests/browser/harness/independent-decode';
import { makeClip } from '#tests/browser/harness/make-clips';
import { readCode } from '#tests/browser/harness/picture-code';
import { propertyClips } from '#tests/browser/property-clips';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { must } from './a-host';

/**
 * The window shows frame n as another decoder's n-th picture on all of these (tests/browser/frame-exactness.spec.ts); here the
 * host's stills and its videos are held to the same pictures.
 */
const kinds = [
  'variable-rate',
  'two-pictures-at-one-time',
  'open-groups',
  'one-group-of-250',
  'rotate-90',
  'rotate-180',
  'rotate-270',
  'mirrored',
  'pixels-2-to-1',
  'turned-mirrored-and-pixels-2-to-1',
  'starts-at-10-s',
  'cut-at-both-ends-by-edit-list',
  'vp9',
  '240-a-second',
];

const tools = (await findMediaTool('ffmpeg')) !== null && (await findMediaTool('ffprobe')) !== null;
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-alike-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function numbersIn(file: string, width: number, height: number): Promise<(number | null)[]> {
  const tool = await findMediaTool('ffmpeg');
  const filter = `crop=${width}:${height}:0:0,scale=160:90`;
  const { stdout } = await execa(
    tool?.path ?? '',
    ['-v', 'error', '-i', file, '-vf', filter, '-pix_fmt', 'rgba', '-f', 'rawvideo', 'pipe:1'],
    { encoding: 'buffer', stripFinalNewline: false },
  );
  const size = 160 * 90 * 4;
  return Array.from({ length: Math.floor(stdout.length / size) }, (_, n) =>
    readCode(new Uint8ClampedArray(stdout.buffer, stdout.byteOffset + n * size, size), 160, 90),
  );
}

describe.skipIf(!tools)('frame n of stills and videos', () => {
  it.each(kinds)('%s: is the n-th picture of another decoder', async (name) => {
    const kind = propertyClips.find((each) => each.name === name);
    const file = kind ? await makeClip(kind) : null;
    if (file === null) throw new Error(`no clip is named ${name}`);
    const truth =
      (await decodeIndependently(file))?.filter((each) => !kind?.twins?.includes(each ?? -1)) ?? [];
    const track = must(await probeTracks(file)).tracks[0];
    if (!track) throw new Error('no film in it');
    const table = must(await probeFrameTimes(file, 1, track.base));
    expect(table.starts.length).toBe(truth.length);
    const { width, height, rotation } = track;
    const swim = aSwim({ events: [], postures: [] });
    const clip = { ...swim.clip, width, height, rotation, frameTimes: recordFromTable(table) };

    const frames = [0, 1, 29, 30, 31, truth.length - 2, truth.length - 1];
    const seen: [number, number | null][] = [];
    const read = await readPictures(file, { ...clip, width: 640, height: 360 }, frames, (picture) => {
      seen.push([picture.frame, readCode(new Uint8ClampedArray(picture.rgba), 640, 360)]);
    });
    expect(read.ok).toBe(true);
    expect(seen).toEqual(frames.map((frame) => [frame, truth[frame]]));

    // slowed so much that no frame is left out, some ten from the middle of a group on
    const first = 25;
    const step = ((table.starts[first + 10] ?? 0) - (table.starts[first] ?? 0)) / table.ticksPerSecond;
    const made = must(
      await exportVideo({
        sources: [{ swim: { ...swim, clip }, clip: file, knowledge: { swimmer: null, markingError: null } }],
        plan: {
          sides: [
            {
              swimId: swim.id,
              stretch: { first: 0, last: truth.length - 1 },
              lock: { on: 'frame', frame: first },
              frame: first,
              mirrored: false,
              title: 'A swim',
            },
          ],
          mode: 'time',
          lead: 0,
          seconds: step,
          slow: kind?.rate === 240 ? 24 : 3,
          rate: 30,
          width: 640,
          sameLength: false,
          keepInView: false,
          lay: null,
          show: { bodyLine: false, angles: false, score: false, flashes: false, facts: false },
          caption: '',
          sound: false,
          name,
        },
        folder,
        tempId: name,
        signal: new AbortController().signal,
        report: () => undefined,
      }),
    );
    const shown = await numbersIn(made.path, 640, 360);
    const runs = shown.filter((number, n) => n === 0 || number !== shown[n - 1]);
    expect(runs).toEqual(truth.slice(first, first + runs.length));
    expect(runs.length).toBeGreaterThanOrEqual(10);
  });
});
