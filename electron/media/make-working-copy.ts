import { failure, type Result, success } from '#core/host-contract/host-error';
import type { FrameTable } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { filmStream } from './film-stream';
import { findMediaTool } from './find-media-tool';
import { probeFrameTimes } from './probe-frame-times';
import { type ProbedTrack, probeTracks } from './probe-tracks';
import { runMediaTool } from './run-media-tool';
import { timingOption } from './timing-option';
import { everyField } from './wanted-pictures';

interface CopyOrder {
  readonly original: string;
  /** Where the copy goes; written over. */
  readonly target: string;
  /** Film track from 1. */
  readonly track: number;
  /** Whether each field becomes a picture of its own. */
  readonly fields: boolean;
  /** The frames the copy must have, one for one. */
  readonly table: FrameTable;
  readonly signal: AbortSignal;
  readonly report: (share: number | null, words: string) => void;
}

/** Longest side of a copy: pictures larger than this are made smaller, or stepping would be slow again. */
const longestSide = 2048;
const largeBecomes = 1920;

/**
 * Makes the copy of a film that is stepped through where the film itself can't be: H.264 in groups of 12 without
 * pictures that lean forward, which decodes at once from anywhere (docs/performance.md), or, for film whose every picture
 * is a JPEG, the same pictures in a container the window reads. Every frame keeps its time; that is checked against
 * `table`, and a copy that differs is refused.
 */
export async function makeWorkingCopy(order: CopyOrder): Promise<Result<null>> {
  const { original, target, track, table, signal, report } = order;
  const probed = await probeTracks(original, { signal });
  if (!probed.ok) return probed;
  const film = probed.value.tracks[track - 1];
  if (!film) return failure('no-video-track');
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return failure('no-media-tool', { name: 'ffmpeg' });
  const repack = film.codec === 'mjpeg' && !order.fields;
  const words = repack ? 'Putting the pictures into another file' : 'Making the working copy';
  report(0, words);
  const frames = Math.max(1, table.starts.length);
  const seconds = ((table.endTick - (table.starts[0] ?? 0)) / table.ticksPerSecond) | 0;
  const made = await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostats', '-progress', 'pipe:1', '-y', '-copyts', '-start_at_zero'],
      ...['-i', `file:${original}`, '-map', `0:${filmStream(track)}`, '-an', '-sn', '-dn'],
      ...(repack ? repacked : encoded(order, film, timingOption(tool.version))),
      ...['-video_track_timescale', String(table.ticksPerSecond), '-map_metadata', '-1'],
      // as QuickTime the pictures of MJPEG are named for what they are
      ...['-movflags', '+faststart', '-f', repack ? 'mov' : 'mp4', `file:${target}`],
    ],
    {
      signal,
      inBackground: true,
      // our default: a weak machine makes a copy at a twentieth of true speed; beyond that something hangs
      timeoutMs: (1800 + 40 * seconds) * 1000,
      onLine: (line) => {
        const done = /^frame=\s*(\d+)/.exec(line)?.[1];
        if (done !== undefined) report((0.98 * Number(done)) / frames, words);
      },
    },
  );
  if (!made.ok) return made;
  report(0.98, 'Checking its frames one by one');
  return checkFrames(target, table, signal);
}

/** Frames in the copy's file against those it must have. */
async function checkFrames(target: string, table: FrameTable, signal: AbortSignal): Promise<Result<null>> {
  const copy = await probeTracks(target, { signal });
  if (!copy.ok) return copy;
  const base = copy.value.tracks[0]?.base;
  if (!base) return failure('no-video-track');
  const copied = await probeFrameTimes(target, 1, base, { signal });
  if (!copied.ok) return copied;
  // on the same clock, so half a tick means not one tick apart
  if (sameStarts(copied.value, table, 0.5)) return success(null);
  return failure('copy-differs', { frames: table.starts.length, copied: copied.value.starts.length });
}

/** MJPEG as AVI carries it leaves its Huffman tables out; the filter puts them in, so that each picture is a JPEG. */
const repacked: readonly string[] = ['-c:v', 'copy', '-bsf:v', 'mjpeg2jpeg'];

function encoded(
  { fields, table }: CopyOrder,
  film: ProbedTrack,
  timing: readonly string[],
): readonly string[] {
  const filters = [
    // every picture, also one not marked as interlaced, or frames and fields would mix
    ...(fields ? [everyField] : []),
    ...resized(film),
  ];
  return [
    ...(filters.length > 0 ? ['-vf', filters.join(',')] : []),
    ...[...timing, '-enc_time_base', `1:${table.ticksPerSecond}`],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '21', '-pix_fmt', 'yuv420p'],
    ...['-g', '12', '-bf', '0', '-sc_threshold', '0'],
  ];
}

/** Even sides, as the coding needs; large pictures smaller. After turning, which ffmpeg does before any filter. */
function resized({ codedWidth, codedHeight, rotation }: ProbedTrack): readonly string[] {
  const [width, height] = rotation % 180 === 0 ? [codedWidth, codedHeight] : [codedHeight, codedWidth];
  const longest = Math.max(width, height);
  const share = longest > longestSide ? largeBecomes / longest : 1;
  const even = (side: number): number => Math.max(2, Math.round((side * share) / 2) * 2);
  if (even(width) === width && even(height) === height) return [];
  return [`scale=${even(width)}:${even(height)}`];
}
