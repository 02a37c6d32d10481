import { execa } from 'execa';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Clip } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { timingOption } from '../video/timing-option';
import { findMediaTool } from './find-media-tool';
import { filmStream } from './film-stream';
import { probeFrameTimes } from './probe-frame-times';
import { probeTracks } from './probe-tracks';

export interface ReadPicture {
  readonly frame: number;
  readonly width: number;
  readonly height: number;
  /** Red, green, blue and opaque, row by row. */
  readonly rgba: Uint8Array;
}

type PictureClip = Pick<Clip, 'frameTimes' | 'width' | 'height' | 'originalName' | 'fields' | 'track'>;

/**
 * Reads chosen frames of a clip with ffmpeg, at the size the stage shows, and hands each over in order of time. Frames
 * are told by the container's own timestamps, after the list of shown ones is found to be as long as the swim's.
 */
export async function readPictures(
  file: string,
  clip: PictureClip,
  frames: readonly number[],
  hand: (picture: ReadPicture) => void,
  signal?: AbortSignal,
): Promise<Result<null>> {
  const wanted = [...new Set(frames)].sort((a, b) => a - b);
  if (wanted.length === 0) return success(null);
  if (clip.fields)
    return failure('unsupported-codec', { name: clip.originalName, codec: 'interlaced fields' });
  const found = await findMediaTool('ffmpeg');
  if (!found) return failure('no-media-tool', { name: 'ffmpeg' });
  const options = signal ? { signal } : {};
  const track = clip.track ?? 1;
  const probed = await probeTracks(file, options);
  if (!probed.ok) return probed;
  const base = probed.value.tracks[track - 1]?.base;
  if (!base) return failure('no-video-track', { name: clip.originalName });
  const table = await probeFrameTimes(file, track, base, options);
  if (!table.ok) return table;
  // a file that breaks off lists more pictures than it holds; fewer than the swim knows is another film
  const { starts } = table.value;
  if (starts.length < tableFromRecord(clip.frameTimes).starts.length)
    return failure('clip-changed', { name: clip.originalName });
  const chosen = wanted
    .map((frame) => `eq(pts,${Math.round((starts[frame] ?? -1) / base.numerator)})`)
    .join('+');
  const { width, height } = clip;
  const args = [
    ...['-hide_banner', '-loglevel', 'error', '-nostdin', '-protocol_whitelist', 'file,pipe', '-copyts'],
    ...['-i', `file:${file}`, '-map', `0:${filmStream(track)}`, '-an', '-sn', '-dn'],
    ...['-vf', `select='${chosen}',scale=${width}:${height}`, ...timingOption(found.version)],
    ...['-frames:v', String(wanted.length), '-pix_fmt', 'rgba', '-f', 'rawvideo', 'pipe:1'],
  ];
  const decoder = execa(found.path, args, {
    shell: false,
    stdin: 'ignore',
    encoding: 'buffer',
    buffer: { stdout: false, stderr: true },
    reject: false,
    timeout: 600_000,
    forceKillAfterDelay: 2000,
    ...(signal ? { cancelSignal: signal } : {}),
  });
  const size = width * height * 4;
  let rgba = new Uint8Array(size);
  let filled = 0;
  let count = 0;
  try {
    for await (const chunk of decoder.iterable({ from: 'stdout', binary: true, preserveNewlines: true })) {
      let rest = chunk as Uint8Array;
      while (rest.length > 0) {
        const part = rest.subarray(0, size - filled);
        rgba.set(part, filled);
        filled += part.length;
        rest = rest.subarray(part.length);
        if (filled < size) continue;
        const frame = wanted[count++];
        if (frame !== undefined) hand({ frame, width, height, rgba });
        rgba = new Uint8Array(size);
        filled = 0;
      }
    }
  } catch (error) {
    if (signal?.aborted) return failure('cancelled');
    throw error;
  }
  const done = await decoder;
  if (signal?.aborted || done.isCanceled) return failure('cancelled');
  if (count === wanted.length) return success(null);
  return failure('media-tool-failed', {
    name: 'ffmpeg',
    message: `frame ${(wanted[count] ?? 0) + 1} could not be read`,
  });
}
