import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { findMediaTool } from '../media/find-media-tool';
import { noteTool } from '../media/running-tools';
import { runMediaTool } from '../media/run-media-tool';
import { hostJobsWords } from '#core/words/host-jobs';

export type VideoFormat = 'mp4' | 'webm';

export interface VideoEncoder {
  /** Takes a picture while the one before is on its way; a picture may be changed again once the next is taken. */
  write(picture: Uint8Array): Promise<Result<null>>;
  /** Waits until the file is whole. */
  finish(): Promise<Result<null>>;
  /** Gives up; the half-made file is the caller's to remove. */
  stop(): Promise<void>;
}

export interface Sound {
  readonly file: string;
  /** Seconds on the file's own clock, and for how long. */
  readonly from: number;
  readonly seconds: number;
}

/**
 * Our choices: sharp enough to step through (a constant quality of 20), quick enough to wait for, a key picture every two
 * seconds so that a phone can scrub.
 */
const h264 = (rate: number): readonly string[] => [
  ...['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '20', '-profile:v', 'high'],
  ...['-g', String(2 * rate), '-pix_fmt', 'yuv420p', '-movflags', '+faststart'],
];
const vp9 = (rate: number): readonly string[] => [
  ...['-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '6', '-row-mt', '1'],
  ...['-b:v', '0', '-crf', '30', '-g', String(2 * rate), '-pix_fmt', 'yuv420p'],
];
const tagged = [
  '-colorspace',
  'bt709',
  '-color_primaries',
  'bt709',
  '-color_trc',
  'bt709',
  '-color_range',
  'tv',
];

/** Encoder arguments of a format; the bench gives them to ffmpeg alone as well. */
export const encodeOptions = (format: VideoFormat, rate: number): readonly string[] => [
  ...(format === 'mp4' ? h264(rate) : vp9(rate)),
  ...tagged,
];

const formats = new Map<string, VideoFormat | null>();

/** MP4 with H.264 where ffmpeg can encode it, else WebM with VP9; null where it can do neither. */
export async function videoFormat(): Promise<Result<VideoFormat>> {
  const found = await findMediaTool('ffmpeg');
  if (!found) return failure('no-media-tool', { name: 'ffmpeg' });
  let format = formats.get(found.path);
  if (format === undefined) {
    const said = await runMediaTool('ffmpeg', ['-encoders']);
    // one that was killed has not said what it can do: asked again next time
    if (!said.ok) return said;
    format = / libx264 /.test(said.value) ? 'mp4' : / libvpx-vp9 /.test(said.value) ? 'webm' : null;
    formats.set(found.path, format);
  }
  return format === null
    ? failure('media-tool-failed', { name: 'ffmpeg', message: hostJobsWords('canEncodeNeither') })
    : success(format);
}

export async function openVideoEncoder(options: {
  readonly file: string;
  readonly format: VideoFormat;
  readonly width: number;
  readonly height: number;
  readonly rate: number;
  readonly sound: Sound | null;
  readonly signal: AbortSignal;
}): Promise<Result<VideoEncoder>> {
  const { file, format, width, height, rate, sound, signal } = options;
  const found = await findMediaTool('ffmpeg');
  if (!found) return failure('no-media-tool', { name: 'ffmpeg' });
  const encoder = execa(
    found.path,
    [
      ...['-hide_banner', '-loglevel', 'error', '-protocol_whitelist', 'file,pipe'],
      ...[
        '-f',
        'rawvideo',
        '-pix_fmt',
        'yuv420p',
        '-s',
        `${width}x${height}`,
        '-r',
        String(rate),
        '-i',
        'pipe:0',
      ],
      ...(sound
        ? [
            '-seek_timestamp',
            '1',
            '-ss',
            sound.from.toFixed(6),
            '-t',
            sound.seconds.toFixed(6),
            '-i',
            `file:${sound.file}`,
          ]
        : []),
      ...[
        '-map',
        '0:v:0',
        ...(sound ? ['-map', '1:a:0?', ...(format === 'mp4' ? ['-c:a', 'aac'] : [])] : ['-an']),
      ],
      ...encodeOptions(format, rate),
      ...['-f', format, '-y', `file:${file}`],
    ],
    {
      shell: false,
      stdin: 'pipe',
      stdout: 'ignore',
      stderr: 'pipe',
      reject: false,
      cancelSignal: signal,
      forceKillAfterDelay: 2000,
    },
  );
  noteTool(encoder);
  const { stdin } = encoder;
  // a dead encoder is told of by how it ended, not by the pipe it left
  stdin.on('error', () => undefined);
  let ended = false;
  let onItsWay: Promise<void> = Promise.resolve();
  const end = encoder.then((run) => {
    ended = true;
    return run;
  });
  const broken = async (): Promise<Result<never>> => {
    const run = await end;
    if (run.isCanceled || signal.aborted) return failure('cancelled');
    const said = run.stderr.trim().split('\n').at(-1) ?? '';
    if (/No space left/i.test(run.stderr))
      return failure('disk-full', { name: file.split(/[/\\]/).at(-1) ?? '' });
    return failure('media-tool-failed', {
      name: 'ffmpeg',
      message: said.replace(/(?:[A-Za-z]:)?[/\\]\S*[/\\]/g, '').slice(0, 300) || hostJobsWords('endedEarly'),
    });
  };
  return success({
    async write(picture) {
      await Promise.race([onItsWay, end]);
      if (ended || signal.aborted) return broken();
      onItsWay = new Promise((resolve) => {
        stdin.write(picture, () => resolve());
      });
      return success(null);
    },
    async finish() {
      stdin.end();
      const run = await end;
      return run.failed ? broken() : success(null);
    },
    async stop() {
      stdin.destroy();
      encoder.kill();
      await end;
    },
  });
}
