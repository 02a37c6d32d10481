import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { ComputedReading } from '#core/measures/reading';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { findMediaTool } from '../../electron/media/find-media-tool';
import { pictureTimes } from '../../sample-clips/make-clip';
import { makeTruth } from '../../sample-clips/make-truth';
import { readPictureNumber } from '../../sample-clips/picture-number';
import { scenarios } from '../../sample-clips/scenario';
import { truthSchema } from '../../sample-clips/truth-schema';

const samples = fileURLToPath(new URL('../../sample-clips/', import.meta.url));
const swimOf = (id: string): Swim => {
  const parsed = parseSwim(readFileSync(path.join(samples, 'library/swims', id, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(`${id}: ${JSON.stringify(parsed.fault)}`);
  return parsed.value;
};
const truthOf = (id: string) =>
  truthSchema.parse(JSON.parse(readFileSync(path.join(samples, 'truth', `${id}.json`), 'utf8')));
const squad = parseSquad(readFileSync(path.join(samples, 'library/squad.json'), 'utf8'));
const ffmpeg = await findMediaTool('ffmpeg');
const ffprobe = await findMediaTool('ffprobe');
if (!ffmpeg || !ffprobe) console.warn('no ffmpeg: the pictures of the samples are not looked at');

function reading(id: string, of: string): ComputedReading {
  const swim = swimOf(id);
  const swimmer = squad.ok
    ? (squad.value.swimmers.find((each) => each.id === swim.card.swimmerId) ?? null)
    : null;
  const found = computeReadings(readingContext(swim, { swimmer, markingError: null })).find(
    (each) => each.id === of,
  );
  if (found?.status !== 'computed') throw new Error(`${of} of ${id} is ${JSON.stringify(found)}`);
  return found;
}

describe('sample swims', () => {
  it('take less than 12 MB, with everything', () => {
    const sizeOf = (at: string): number =>
      statSync(at).isDirectory()
        ? readdirSync(at).reduce((sum, name) => sum + sizeOf(path.join(at, name)), 0)
        : statSync(at).size;
    expect(sizeOf(samples)).toBeLessThan(12e6);
  });

  it('are all of an invented squad', () => {
    expect(squad.ok && squad.value.swimmers.every((each) => each.invented)).toBe(true);
    for (const { id } of scenarios) expect(swimOf(id).card.invented).toBe(true);
  });

  it.each(scenarios.map((each) => each.id))('%s: its truth is what its model draws', (id) => {
    const scenario = scenarios.find((each) => each.id === id);
    if (!scenario) throw new Error(id);
    const kept = truthOf(id);
    const table = { ...kept.frameTimes, endTick: 0 };
    expect(makeTruth(scenario, { table, times: pictureTimes(scenario) })).toEqual(kept);
  });

  it.skipIf(!ffprobe).each(scenarios.map((each) => each.id))(
    '%s: frame times are those an outside tool reads',
    async (id) => {
      const swim = swimOf(id);
      if (swim.clip.place.kind !== 'inside') throw new Error('samples lie inside');
      const clip = path.join(samples, 'library/swims', id, swim.clip.place.name);
      const { stdout } = await execa(ffprobe?.path ?? '', [
        ...['-v', 'error', '-select_streams', 'v:0', '-show_entries', 'packet=pts', '-of', 'csv=p=0', clip],
      ]);
      const pts = stdout
        .split('\n')
        .map((line) => Number.parseInt(line, 10))
        .filter((each) => each >= 0)
        .sort((a, b) => a - b);
      expect(tableFromRecord(swim.clip.frameTimes).starts).toEqual(pts);
      expect(pts.length).toBe(truthOf(id).realTimes.length);
    },
  );

  it.skipIf(!ffmpeg).each(scenarios.map((each) => each.id))(
    '%s: picture n carries the number n',
    async (id) => {
      const swim = swimOf(id);
      if (swim.clip.place.kind !== 'inside') throw new Error('samples lie inside');
      const { width, height } = swim.clip;
      const wanted = [0, 1, 17, 64, 99];
      const select = wanted.map((n) => `eq(n,${n})`).join('+');
      const { stdout } = await execa(
        ffmpeg?.path ?? '',
        [
          '-v',
          'error',
          '-i',
          path.join(samples, 'library/swims', id, swim.clip.place.name),
          '-vf',
          `select='${select}'`,
          '-vsync',
          'passthrough',
          '-f',
          'rawvideo',
          '-pix_fmt',
          'rgba',
          '-',
        ],
        { encoding: 'buffer', maxBuffer: 64e6 },
      );
      const size = width * height * 4;
      expect(stdout.length).toBe(size * wanted.length);
      expect(
        wanted.map((_, i) => readPictureNumber(stdout.subarray(i * size, (i + 1) * size), width, height)),
      ).toEqual(wanted);
    },
  );
});

// marks carry the stated jitter and frame rounding, so a reading must hold the truth in its own 95 % interval; with
// the seeds fixed these are facts, not chances
describe('readings of the samples hold the truth that drew them', () => {
  const marked = scenarios.filter((each) => each.marked > 0);
  it.each(marked.map((each) => each.id))('%s: kick frequency', (id) => {
    const { value, interval } = reading(id, 'kick-frequency');
    const truth = truthOf(id).model.kickFrequencyHz;
    expect(interval.low).toBeLessThanOrEqual(truth);
    expect(interval.high).toBeGreaterThanOrEqual(truth);
    expect(Math.abs(value - truth) / truth).toBeLessThan(0.03);
  });

  it.each(marked.filter((each) => each.withScale).map((each) => each.id))(
    '%s: kick amplitude and speed',
    (id) => {
      const { kickAmplitudeMetres, meanSpeed } = truthOf(id).model;
      const amplitude = reading(id, 'kick-amplitude-toe');
      expect(amplitude.unit).toBe('m');
      expect(Math.abs(amplitude.value - kickAmplitudeMetres) / kickAmplitudeMetres).toBeLessThan(0.05);
      const speed = reading(id, 'speed-hip');
      expect(Math.abs(speed.value - meanSpeed) / meanSpeed).toBeLessThan(0.05);
    },
  );

  it.each(['sample-butterfly-together', 'sample-butterfly-late-kick'])(
    '%s: both kicks against the hands',
    (id) => {
      const { kick1TopToEntryMs, kick2BottomToExitMs } = truthOf(id).model;
      for (const [of, truth] of [
        ['kick1-top-to-entry', kick1TopToEntryMs],
        ['kick2-bottom-to-exit', kick2BottomToExitMs],
      ] as const) {
        const { interval } = reading(id, of);
        expect(interval.low).toBeLessThanOrEqual(truth ?? Number.NaN);
        expect(interval.high).toBeGreaterThanOrEqual(truth ?? Number.NaN);
      }
    },
  );

  it('tells the late second kick from the one in time', () => {
    const early = reading('sample-butterfly-together', 'kick2-bottom-to-exit');
    const late = reading('sample-butterfly-late-kick', 'kick2-bottom-to-exit');
    expect(early.interval.high).toBeLessThan(0);
    expect(late.interval.low).toBeGreaterThan(0);
  });
});

it('ships no clip twice', () => {
  const clips = readdirSync(path.join(samples, 'library/swims')).flatMap((id) =>
    readdirSync(path.join(samples, 'library/swims', id)).filter((name) => /\.(mp4|webm|mov|mkv)$/.test(name)),
  );
  expect(clips.length).toBe(scenarios.length);
  expect(existsSync(path.join(samples, 'clips'))).toBe(false);
});
