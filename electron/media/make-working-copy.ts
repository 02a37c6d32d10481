import type { FrameRange } from '#core/timeline/frame-range';
import { rm } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { FrameTable } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { copyCoding, copySize } from './copy-coding';
import { type Focus, makePieces, pieceLengths, piecesInOrder } from './copy-pieces';
import { filmStream } from './film-stream';
import { findMediaTool } from './find-media-tool';
import type { KnownFilm } from './known-film';
import { probeFrameTimes } from './probe-frame-times';
import { probeTracks } from './probe-tracks';
import { runMediaTool } from './run-media-tool';
import { timingOption } from './timing-option';
import { canBeginAnywhere, everyField, oneAtATime } from './wanted-pictures';
import { hostJobsWords } from '#core/words/host-jobs';

export interface CopyOrder {
  readonly known: KnownFilm;
  /** Where the copy goes; written over. */
  readonly target: string;
  /** A folder for its pieces, made when there are any, and taken away at the end. */
  readonly pieces: string;
  /** The frames the copy must have, one for one. */
  readonly table: FrameTable;
  readonly focus: Focus;
  readonly signal: AbortSignal;
  readonly report: (share: number | null, words: string) => void;
  /** A piece of the copy can be shown; null: there are no pieces any more. */
  readonly onPiece: (piece: FrameRange | null) => void;
}

const words = hostJobsWords('makingWorkingCopy');
/** What is left to do once every picture is made: putting together, and the check. */
const restShare = 0.04;

/**
 * Makes the copy of a film that is stepped through where the film itself can't be: H.264 in groups of 12 without
 * pictures that lean forward, which decodes at once from anywhere (docs/performance-tables.md), or, for film whose every picture
 * is a JPEG, the same pictures in a container the window reads. It is made in pieces from where the coach looks, where
 * reading the film may begin anywhere. Every frame keeps its time; that is checked against `table`, and a copy that
 * differs is refused.
 */
export async function makeWorkingCopy(order: CopyOrder): Promise<Result<null>> {
  const { known, pieces, table, signal, report, onPiece } = order;
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return failure('no-media-tool', { name: 'ffmpeg' });
  const timing = timingOption(tool.version);
  report(0, words);
  if (isRepacked(known) || !canBeginAnywhere(known)) return wholeCopy(order, timing);
  try {
    const made = await makePieces({
      ...pieceLengths(table),
      ...{ known, table, timing, folder: pieces, focus: order.focus, signal, onMade: onPiece },
      onFrames: (done) => report(((1 - restShare) * done) / Math.max(1, table.starts.length), words),
    });
    const joined = made.ok ? await joinPieces(order, made.value) : made;
    if (joined.ok || joined.error.code !== 'copy-differs') return joined;
  } finally {
    onPiece(null);
    await rm(pieces, { recursive: true, force: true });
  }
  // this container's places can't be trusted after all: from its beginning then
  return wholeCopy(order, timing);
}

const isRepacked = ({ film, fields }: KnownFilm): boolean => film.codec === 'mjpeg' && !fields;

async function joinPieces(order: CopyOrder, pieces: readonly FrameRange[]): Promise<Result<null>> {
  const { target, table, signal, report } = order;
  report(1 - restShare, hostJobsWords('puttingItsPieces'));
  const joined = await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'error', '-y', '-f', 'mp4', '-i', 'pipe:0', '-map', '0:V:0', '-c', 'copy', '-copyts'],
      ...['-video_track_timescale', String(table.ticksPerSecond), '-map_metadata', '-1'],
      ...['-movflags', '+faststart', '-f', 'mp4', `file:${target}`],
    ],
    { signal, inBackground: true, input: Readable.from(piecesInOrder(order.pieces, pieces)) },
  );
  return joined.ok ? checkFrames(order) : joined;
}

/** The whole copy in one go, from the film's beginning. */
async function wholeCopy(order: CopyOrder, timing: readonly string[]): Promise<Result<null>> {
  const { known, target, table, signal, report } = order;
  const repack = isRepacked(known);
  const said = repack ? hostJobsWords('puttingPicturesInto') : words;
  const frames = Math.max(1, table.starts.length);
  const seconds = ((table.endTick - (table.starts[0] as number)) / table.ticksPerSecond) | 0;
  report(0, said);
  const made = await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostats', '-progress', 'pipe:1', '-y', '-copyts', '-start_at_zero'],
      ...['-i', `file:${known.file}`, '-map', `0:${filmStream(known.track)}`, '-an', '-sn', '-dn'],
      ...(repack ? repacked : encoded(known, table, timing)),
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
        if (done !== undefined) report(((1 - restShare) * Number(done)) / frames, said);
      },
    },
  );
  return made.ok ? checkFrames(order) : made;
}

/** Frames in the copy's file against those it must have. */
async function checkFrames({ target, table, signal, report }: CopyOrder): Promise<Result<null>> {
  report(1 - restShare / 2, hostJobsWords('checkingItsFrames'));
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
  { fields, film }: KnownFilm,
  table: FrameTable,
  timing: readonly string[],
): readonly string[] {
  const filters = [
    oneAtATime,
    // every picture, also one not marked as interlaced, or frames and fields would mix
    ...(fields ? [everyField] : []),
    ...copySize(film),
  ];
  return [...['-vf', filters.join(',')], ...copyCoding(timing, table.ticksPerSecond)];
}
