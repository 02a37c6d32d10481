import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { rm, stat } from 'node:fs/promises';
import { promisify } from 'node:util';
import { createCanvas } from '@napi-rs/canvas';
import type { FrameTable } from '#core/timeline/frame-table';
import { pictureDrawer } from './draw-picture';
import { addGrain } from './drawing/grain';
import type { Scenario } from './scenario';

export interface MadeClip {
  readonly file: string;
  readonly bytes: number;
  readonly table: FrameTable;
  /** Real time of each picture, seconds from the first. */
  readonly times: readonly number[];
}

const ffmpeg = process.env['SUBMARK_FFMPEG'] ?? 'ffmpeg';
const ffprobe = process.env['SUBMARK_FFPROBE'] ?? 'ffprobe';
const run = promisify(execFile);

/**
 * Real times of the pictures. A phone in low light drops to half its rate now and then: every seventh to ninth picture
 * is shown twice as long, in a fixed pattern.
 */
export function pictureTimes(scenario: Scenario): readonly number[] {
  const times: number[] = [];
  let ticks = 0;
  for (let i = 0; i < scenario.pictures; i++) {
    const time = ticks / scenario.captureRate;
    // WebM keeps whole milliseconds: a picture is drawn as of the time it will carry
    times.push(scenario.shape === 'vp9' ? Math.round(1000 * time) / 1000 : time);
    ticks += scenario.shape === 'phone' && (i % 9 === 6 || i % 16 === 11) ? 2 : 1;
  }
  return times;
}

/** Colours as HD film has them, and said so in the file, so that every player shows the same. */
const colours = {
  filter: 'scale=out_color_matrix=bt709:out_range=tv',
  tags: ['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv'],
} as const;

const codecs: Readonly<Record<Scenario['shape'], readonly string[]>> = {
  plain: ['-c:v', 'libx264', '-preset', 'slow', '-crf', '21', '-bf', '3', '-g', '120', '-pix_fmt', 'yuv420p'],
  vp9: [
    '-c:v',
    'libvpx-vp9',
    '-crf',
    '28',
    '-b:v',
    '0',
    '-g',
    '90',
    '-cpu-used',
    '3',
    '-row-mt',
    '0',
    '-threads',
    '1',
    '-pix_fmt',
    'yuv420p',
  ],
  'slow-motion': [
    '-c:v',
    'libx264',
    '-preset',
    'slow',
    '-crf',
    '23',
    '-bf',
    '2',
    '-g',
    '120',
    '-pix_fmt',
    'yuv420p',
  ],
  phone: ['-c:v', 'libx264', '-preset', 'slow', '-crf', '22', '-bf', '0', '-g', '60', '-pix_fmt', 'yuv420p'],
};

/** Draws and encodes a scenario's clip into a folder; a phone's is stored lying and turned by its header. */
export async function makeClip(scenario: Scenario, folder: string): Promise<MadeClip> {
  const { camera, shape, storedRate, trouble } = scenario;
  const times = pictureTimes(scenario);
  const file = `${folder}/${scenario.file}`;
  const filter = trouble?.filter ? `${trouble.filter},${colours.filter}` : colours.filter;
  const coarser = trouble?.crf === undefined ? [] : ['-crf', String(trouble.crf)];
  const turned = shape === 'phone';
  const middle = turned ? `${folder}/lying.mp4` : file;
  // every picture is placed on its own tick, which makes the rate variable
  const slots = times.map((time) => Math.round(time * scenario.captureRate));
  const filters = turned
    ? [
        ...['-vf', `transpose=2,${filter},setpts=${nested(slots)}`],
        ...['-vsync', 'passthrough', '-video_track_timescale', '600'],
      ]
    : ['-vf', filter];
  const args = [
    ...['-y', '-v', 'error', '-f', 'rawvideo', '-pix_fmt', 'rgba', '-s', `${camera.width}x${camera.height}`],
    ...[
      '-r',
      String(storedRate),
      '-i',
      '-',
      ...filters,
      ...codecs[shape],
      ...coarser,
      ...colours.tags,
      '-fflags',
      '+bitexact',
      '-flags:v',
      '+bitexact',
      '-threads',
      '1',
    ],
    ...(shape === 'slow-motion'
      ? ['-metadata', `com.android.capture.fps=${scenario.captureRate}`, '-movflags', 'use_metadata_tags']
      : []),
    middle,
  ];
  const child = spawn(ffmpeg, args, { stdio: ['pipe', 'inherit', 'inherit'] });
  const ended = once(child, 'exit');
  const canvas = createCanvas(camera.width, camera.height);
  const context = canvas.getContext('2d');
  const draw = pictureDrawer(scenario);
  for (const [number, time] of times.entries()) {
    draw(context, number, time);
    const pixels = context.getImageData(0, 0, camera.width, camera.height).data;
    addGrain(pixels, number);
    if (!child.stdin.write(Buffer.from(pixels))) await once(child.stdin, 'drain');
  }
  child.stdin.end();
  const [code] = await ended;
  if (code !== 0) throw new Error(`${ffmpeg} ended with ${String(code)}`);
  if (turned) {
    await run(ffmpeg, [
      '-y',
      '-v',
      'error',
      '-i',
      middle,
      '-c',
      'copy',
      '-metadata:s:v:0',
      'rotate=270',
      '-video_track_timescale',
      '600',
      '-fflags',
      '+bitexact',
      file,
    ]);
    await rm(middle);
  }
  await run(ffmpeg, [
    '-y',
    '-v',
    'error',
    '-ss',
    '0.9',
    '-i',
    file,
    '-frames:v',
    '1',
    '-vf',
    'scale=480:270:force_original_aspect_ratio=increase,crop=480:270',
    '-q:v',
    '5',
    `${folder}/thumb.jpg`,
  ]);
  return { file, bytes: (await stat(file)).size, table: await probeTable(file), times };
}

/** A step function of the picture's number as an expression, nested by halves so that it stays shallow. */
function nested(slots: readonly number[]): string {
  const part = (from: number, to: number): string => {
    if (to - from === 1) return String(slots[from]);
    const half = (from + to) >> 1;
    return `if(lt(N\\,${half})\\,${part(from, half)}\\,${part(half, to)})`;
  };
  return `(${part(0, slots.length)})/(30*TB)`;
}

/** Presentation times as ffprobe tells them. */
async function probeTable(file: string): Promise<FrameTable> {
  const { stdout } = await run(ffprobe, [
    ...[
      '-v',
      'error',
      '-select_streams',
      'v:0',
      '-show_entries',
      'stream=time_base:packet=pts,duration',
      '-of',
      'json',
      file,
    ],
  ]);
  const told = JSON.parse(stdout) as {
    streams: { time_base: string }[];
    packets: { pts: number; duration?: number }[];
  };
  const ticksPerSecond = Number(told.streams[0]?.time_base.split('/')[1]);
  const shown = told.packets.filter((each) => each.pts >= 0).sort((a, b) => a.pts - b.pts);
  const starts = shown.map((each) => each.pts);
  const last = shown.at(-1);
  const gap = (starts.at(-1) ?? 0) - (starts.at(-2) ?? 0);
  return { ticksPerSecond, starts, endTick: (last?.pts ?? 0) + (last?.duration ?? gap) };
}
