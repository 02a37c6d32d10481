import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { execa } from 'execa';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Swim } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import { fieldTable } from '#core/timeline/field-table';
import type { VideoPlan } from '#core/video/video-plan';
import { findMediaTool } from '#electron/media/find-media-tool';
import { probeFrameTimes } from '#electron/media/probe-frame-times';
import { probeTracks } from '#electron/media/probe-tracks';
import { readPictures } from '#electron/media/read-pictures';
import { selectFrames } from '#electron/media/select-frames';
import { exportVideo, type VideoSource } from '#electron/video/export-video';
import { decodeIndependently } from '#tests/browser/harness/independent-decode';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { fieldNumber, fieldNumbers } from './field-numbers';
import { makeNumberClip } from './number-clips';

let folder: string;
let interlaced: string;
/** 60 a second, silent but for a tone from 2.5 s to 3 s. */
let sounding: string;
let tool: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-any-video-'));
  tool = (await findMediaTool('ffmpeg'))?.path ?? '';
  interlaced = path.join(folder, 'camcorder.mts');
  await makeNumberClip(interlaced, {
    rate: 50,
    pictures: 240,
    after: 'interlace=scan=tff:lowpass=off',
    options: ['-f', 'mpegts', '-flags', '+ilme+ildct', '-c:v', 'mpeg2video', '-q:v', '3', '-bf', '2'],
  });
  const silent = path.join(folder, 'silent.mp4');
  await makeNumberClip(silent, {
    rate: 60,
    pictures: 360,
    options: ['-c:v', 'libx264', '-preset', 'ultrafast', '-x264-params', 'keyint=90:bframes=2'],
  });
  sounding = path.join(folder, 'sounding.mp4');
  const tone = "aevalsrc='if(between(t,2.5,3),0.5*sin(2*PI*880*t),0)':s=48000:d=6";
  await execa(tool, [
    ...['-v', 'error', '-i', silent, '-f', 'lavfi', '-i', tone, '-map', '0:v', '-map', '1:a'],
    ...['-c:v', 'copy', '-c:a', 'aac', '-b:a', '128k', sounding],
  ]);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function source(clip: string, fields: boolean): Promise<VideoSource> {
  const tracks = await probeTracks(clip);
  const base = tracks.ok ? tracks.value.tracks[0]?.base : undefined;
  const coded = base && (await probeFrameTimes(clip, 1, base));
  if (!coded?.ok) throw new Error('the clip can not be probed');
  const table = fields ? fieldTable(coded.value) : coded.value;
  const plain = aSwim();
  const swim: Swim = {
    ...plain,
    clip: { ...plain.clip, width: 640, height: 360, fields, frameTimes: recordFromTable(table) },
    events: [],
    postures: [],
  };
  return { swim, clip, knowledge: { swimmer: null, markingError: null } };
}

function planFrom({ swim }: VideoSource, frame: number, change: Partial<VideoPlan>): VideoPlan {
  return {
    sides: [
      {
        swimId: swim.id,
        stretch: { first: 0, last: 239 },
        lock: { on: 'frame', frame: 0 },
        frame,
        mirrored: false,
        title: 'A swim',
      },
    ],
    mode: 'time',
    lead: 0,
    seconds: null,
    slow: 1,
    rate: 25,
    width: 640,
    sameLength: false,
    keepInView: false,
    lay: null,
    show: { bodyLine: false, angles: false, score: false, flashes: false, facts: false },
    caption: '',
    sound: false,
    name: 'video',
    ...change,
  };
}

async function make(from: VideoSource, plan: VideoPlan) {
  const made = await exportVideo({
    sources: [from],
    plan,
    folder,
    tempId: plan.name,
    signal: new AbortController().signal,
    report: () => undefined,
  });
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

async function streamsOf(file: string): Promise<Record<string, string>[]> {
  const probe = await findMediaTool('ffprobe');
  const { stdout } = await execa(probe?.path ?? '', ['-v', 'error', '-show_streams', '-of', 'json', file]);
  return (JSON.parse(stdout) as { streams: Record<string, string>[] }).streams;
}

/** Seconds at which something is heard and falls silent again, as another program hears it. */
async function heard(file: string): Promise<{ from: number; to: number }> {
  const { stderr } = await execa(tool, [
    ...['-v', 'info', '-i', file, '-af', 'silencedetect=noise=-30dB:d=0.05', '-f', 'null', '-'],
  ]);
  const at = (which: string): number[] =>
    [...stderr.matchAll(new RegExp(`silence_${which}: (-?[\\d.]+)`, 'g'))].map((found) => Number(found[1]));
  return { from: at('end')[0] ?? Number.NaN, to: at('start').at(-1) ?? Number.NaN };
}

const evenly = (from: number, step: number, count: number): number[] =>
  Array.from({ length: count }, (_, n) => from + n * step);

describe('a video of film of any kind', () => {
  it('of interlaced film shows every field as a frame of its own, in slow motion and from the middle on', async () => {
    const swim = await source(interlaced, true);
    const slowed = await make(swim, planFrom(swim, 131, { slow: 2, seconds: 0.8, name: 'fields' }));
    expect(slowed.pictures).toBe(41);
    expect(await fieldNumbers(slowed.path, 131)).toEqual(evenly(131, 1, 41));
    const read: (number | null)[] = [];
    const pictures = await readPictures(interlaced, swim.swim.clip, [0, 1, 150, 151, 239], (each) =>
      read.push(fieldNumber(each.rgba, each.width, each.height, each.frame)),
    );
    expect([pictures.ok, read]).toEqual([true, [0, 1, 150, 151, 239]]);
  });

  it('leaves frames out when it is quicker than the film, however many there are', async () => {
    const swim = await source(sounding, false);
    const made = await make(swim, planFrom(swim, 20, { rate: 30, seconds: 3.6, name: 'long' }));
    expect(await decodeIndependently(made.path)).toEqual(evenly(20, 2, 109));
    expect((await streamsOf(made.path)).map((stream) => stream.codec_type)).toEqual(['video']);
  });

  it('has the film’s own sound only when asked, at the moment it was heard', async () => {
    const swim = await source(sounding, false);
    // frame 120 is 2 s into the film
    const made = await make(swim, planFrom(swim, 120, { rate: 30, seconds: 2, sound: true, name: 'heard' }));
    const streams = await streamsOf(made.path);
    expect(streams.map((stream) => stream.codec_name)).toEqual(['h264', 'aac']);
    const tone = await heard(made.path);
    expect(Math.abs(tone.from - 0.5)).toBeLessThan(0.03);
    expect(Math.abs(tone.to - 1)).toBeLessThan(0.03);
    const slowed = await make(swim, planFrom(swim, 120, { slow: 2, seconds: 1, sound: true, name: 'slow' }));
    expect((await streamsOf(slowed.path)).map((stream) => stream.codec_name)).toEqual(['h264']);
  });

  it('is WebM with VP9 and Opus where H.264 can’t be encoded', async () => {
    const swim = await source(sounding, false);
    const lacking = path.join(folder, 'ffmpeg-without-h264');
    await writeFile(
      lacking,
      [
        '#!/bin/sh',
        'case "$*" in',
        `*-encoders*) "${tool}" "$@" | grep -v 264; exit 0;;`,
        '*libx264*) echo "Unknown encoder libx264" >&2; exit 1;;',
        'esac',
        `exec "${tool}" "$@"`,
      ].join('\n'),
    );
    await chmod(lacking, 0o755);
    vi.stubEnv('SUBMARK_FFMPEG', lacking);
    try {
      const made = await make(swim, planFrom(swim, 150, { rate: 30, seconds: 1, sound: true, name: 'web' }));
      expect(made).toMatchObject({ name: 'web.webm', format: 'webm', pictures: 31 });
      const streams = await streamsOf(made.path);
      expect(streams.map((stream) => stream.codec_name)).toEqual(['vp9', 'opus']);
      expect(await decodeIndependently(made.path)).toEqual(evenly(150, 2, 31));
      expect(Math.abs((await heard(made.path)).to - 0.5)).toBeLessThan(0.05);
    } finally {
      vi.unstubAllEnvs();
    }
  });
});

describe('naming frames to ffmpeg', () => {
  it('needs few words for frames at even distances, and says when a list would be too long', () => {
    const times = evenly(0, 512, 7200);
    const even = evenly(0, 2, 3600);
    expect(selectFrames(times, even)).toBe('between(pts,0,3685376)*not(mod(pts-0,1024))');
    expect(selectFrames(times, evenly(10, 1, 50))).toBe('between(pts,5120,30208)');
    // squares: no two distances alike
    const uneven = Array.from({ length: 80 }, (_, n) => n * n);
    expect(selectFrames(times, uneven)?.length).toBeLessThan(20_000);
    const jumping = Array.from({ length: 3000 }, (_, n) => Math.floor(n * Math.SQRT2 * 1.3));
    expect(selectFrames(times, jumping)).toBeNull();
  });

  it('takes no frame between that happens to lie at the same distance', () => {
    // between the wanted frames 0 and 2 lies one that a step of 6 from 0 would meet: 0, 6, 12
    expect(selectFrames([0, 6, 12, 18, 24, 30], [0, 2, 4])).toBe('between(pts,0,24)*not(mod(pts-0,12))');
    expect(selectFrames([0, 4, 6, 8, 12], [0, 2, 4])).toBe('between(pts,0,12)*not(mod(pts-0,6))');
    expect(selectFrames([0, 3, 7, 10, 20], [0, 1, 3, 4])).toBe(
      'if(lt(pts,10),between(pts,0,3),between(pts,10,20))',
    );
  });
});
