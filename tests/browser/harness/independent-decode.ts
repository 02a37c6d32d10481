import { execa } from 'execa';
import { findMediaTool } from '#electron/media/find-media-tool';
import { readCode } from './picture-code';

/** The numbers in a clip's pictures as another decoder shows them, in its order; null without that decoder. */
export async function decodeIndependently(path: string): Promise<(number | null)[] | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return null;
  // small: the number's blocks are wide, and what is not piped is not waited for
  const [width, height] = [160, 90];
  const { stdout } = await execa(
    tool.path,
    [
      '-hide_banner',
      '-loglevel',
      'error',
      '-i',
      path,
      '-map',
      '0:v:0',
      '-fps_mode',
      'passthrough',
      '-vf',
      `scale=${width}:${height}`,
      '-pix_fmt',
      'rgba',
      '-f',
      'rawvideo',
      '-',
    ],
    { encoding: 'buffer', maxBuffer: 1e9, stripFinalNewline: false },
  );
  const size = width * height * 4;
  return Array.from({ length: Math.floor(stdout.byteLength / size) }, (_, n) =>
    readCode(new Uint8ClampedArray(stdout.buffer, stdout.byteOffset + n * size, size), width, height),
  );
}

/** When another demuxer and decoder show each picture, in seconds; null without that tool. */
export async function probeStarts(path: string): Promise<number[] | null> {
  const tool = await findMediaTool('ffprobe');
  if (!tool) return null;
  const { stdout } = await execa(tool.path, [
    '-v',
    'error',
    '-select_streams',
    'v:0',
    '-show_entries',
    'frame=best_effort_timestamp_time',
    '-of',
    'default=noprint_wrappers=1:nokey=1',
    path,
  ]);
  return stdout.split('\n').filter(Boolean).map(Number);
}

/** The middle fifth of every picture of a clip as 48 × 48 grey values, as another decoder shows it; null without that decoder. */
export async function fingerprintIndependently(path: string): Promise<number[][] | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return null;
  const { stdout } = await execa(
    tool.path,
    [
      ...['-hide_banner', '-loglevel', 'error', '-i', path, '-fps_mode', 'passthrough'],
      ...['-vf', 'crop=iw/5:ih/5,scale=48:48:flags=area', '-pix_fmt', 'gray', '-f', 'rawvideo', '-'],
    ],
    { encoding: 'buffer', stripFinalNewline: false },
  );
  const size = 48 * 48;
  return Array.from({ length: Math.floor(stdout.byteLength / size) }, (_, n) => [
    ...stdout.subarray(n * size, (n + 1) * size),
  ]);
}
