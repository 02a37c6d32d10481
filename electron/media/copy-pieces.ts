import type { FrameRange } from '#core/timeline/frame-range';
import { createReadStream } from 'node:fs';
import { mkdir, open } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { FrameTable } from '#core/timeline/frame-table';
import { sameStarts } from '#core/timeline/same-starts';
import { usualRate } from '#core/timeline/picture-order';
import { copyCoding, copySize } from './copy-coding';
import type { KnownFilm } from './known-film';
import { nextPiece } from './next-piece';
import { probeFrameTimes } from './probe-frame-times';
import { runMediaTool } from './run-media-tool';
import { wantedPictures } from './wanted-pictures';

/** Seconds of film in a piece where the coach waits for it, and in one made ahead (our defaults). */
const nearSeconds = 2;
const farSeconds = 12;

/** Lengths of pieces, in frames of a film. */
export function pieceLengths(table: FrameTable): Pick<PiecesOrder, 'near' | 'far'> {
  const rate = usualRate(table);
  return {
    near: Math.max(24, Math.round(nearSeconds * rate)),
    far: Math.max(96, Math.round(farSeconds * rate)),
  };
}

/** Where the coach looks while a copy is made. */
export interface Focus {
  frame(): number;
  /** Told of each move; the answer ends that. */
  onMove(hear: () => void): () => void;
}

export interface PiecesOrder {
  readonly known: KnownFilm;
  /** The frames the copy must have, one for one. */
  readonly table: FrameTable;
  /** A folder of its own; what is in it belongs to whoever made it. */
  readonly folder: string;
  readonly timing: readonly string[];
  /** Frames in a piece where the coach waits for it, and in one made ahead. */
  readonly near: number;
  readonly far: number;
  readonly focus: Focus;
  readonly signal: AbortSignal;
  /** A piece is made and its frames are checked. */
  readonly onMade: (piece: FrameRange) => void;
  readonly onFrames: (made: number) => void;
}

/** File of a piece, by its first frame. */
export const pieceFile = (folder: string, first: number): string => path.join(folder, `${first}.mp4`);

/**
 * Makes a working copy piece by piece, the ones where the coach looks first. Every piece can be shown as soon as it is made:
 * its frames are those of the table, one for one, or it is refused with `copy-differs`.
 */
export async function makePieces(order: PiecesOrder): Promise<Result<readonly FrameRange[]>> {
  const { table, folder, focus, near, far, signal, onMade, onFrames, known } = order;
  await mkdir(folder, { recursive: true });
  const frames = table.starts.length;
  const made: FrameRange[] = [];
  let coding: string | null = null;
  let done = 0;
  for (;;) {
    const piece = nextPiece({
      ...{ frames, made, near, far },
      focus: focus.frame(),
      inPairs: known.fields,
    });
    if (!piece) return success(made.sort((a, b) => a.first - b.first));
    const turn = new AbortController();
    // the coach has gone where nothing is yet: that is made first
    const quiet = focus.onMove(() => {
      const at = focus.frame();
      if (![...made, piece].some(({ first, last }) => at >= first && at <= last)) turn.abort();
    });
    const both = AbortSignal.any([signal, turn.signal]);
    const finished = await makePiece(order, piece, both, (share) => onFrames(done + share)).finally(quiet);
    if (signal.aborted) return failure('cancelled');
    if (!finished.ok && turn.signal.aborted) continue;
    if (!finished.ok) return finished;
    coding ??= finished.value;
    // what tells a decoder how to read the pictures stands once at the beginning of the whole: it must be one and the same
    if (coding !== finished.value) return failure('copy-differs', { reason: 'coding' });
    made.push(piece);
    done += piece.last - piece.first + 1;
    onFrames(done);
    onMade(piece);
  }
}

/** One piece; answers how its pictures are coded. */
async function makePiece(
  { known, table, folder, timing }: PiecesOrder,
  { first, last }: FrameRange,
  signal: AbortSignal,
  onFrames: (made: number) => void,
): Promise<Result<string>> {
  const count = last - first + 1;
  const wanted = wantedPictures(
    known,
    Array.from({ length: count }, (_, n) => first + n),
  );
  const target = pieceFile(folder, first);
  const { ticksPerSecond } = table;
  const made = await runMediaTool(
    'ffmpeg',
    [
      ...['-v', 'error', '-nostats', '-progress', 'pipe:1', '-y', ...wanted.input],
      ...[
        '-vf',
        [...wanted.filters, ...copySize(known.film), `setpts=PTS-(${known.times[0] as number})`].join(','),
      ],
      ...['-frames:v', String(count), ...copyCoding(timing, ticksPerSecond)],
      ...['-video_track_timescale', String(ticksPerSecond), '-map_metadata', '-1'],
      // fragments carry their own place in time, so that pieces can be put together as they are; unless told otherwise
      // the first is moved to 0
      ...['-avoid_negative_ts', 'disabled'],
      ...[
        '-movflags',
        'frag_keyframe+empty_moov+default_base_moof+frag_discont',
        '-f',
        'mp4',
        `file:${target}`,
      ],
    ],
    {
      signal,
      inBackground: true,
      timeoutMs: pieceTimeoutMs,
      onLine: (line) => {
        const done = /^frame=\s*(\d+)/.exec(line)?.[1];
        if (done !== undefined) onFrames(Math.min(count, Number(done)));
      },
    },
  );
  if (!made.ok) return made;
  const copied = await probeFrameTimes(target, 1, { numerator: 1, denominator: ticksPerSecond }, { signal });
  if (!copied.ok) return copied;
  const wants = { ...table, starts: table.starts.slice(first, last + 1) };
  // half a tick: on one clock that is none at all
  if (!sameStarts(copied.value, wants, 0.5) || !isInPlace(copied.value, table, first))
    return failure('copy-differs', { frames: count, copied: copied.value.starts.length });
  return success(await codingOf(target));
}

/** Our default: a weak machine makes a copy at a twentieth of true speed, and decodes a long group before it. */
const pieceTimeoutMs = 1_800_000;

/** Whether a piece stands where it belongs on the whole copy's clock, which begins with the swim's first frame. */
function isInPlace(copied: FrameTable, table: FrameTable, first: number): boolean {
  return copied.starts[0] === (table.starts[first] as number) - (table.starts[0] as number);
}

const headBytes = 4096;

/** What stands in a piece's head about the coding of its pictures. */
async function codingOf(file: string): Promise<string> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(headBytes), 0, headBytes, 0);
    const head = buffer.subarray(0, bytesRead);
    const at = head.indexOf('avcC');
    return at < 4 ? '' : head.subarray(at, at - 4 + head.readUInt32BE(at - 4)).toString('hex');
  } finally {
    await handle.close();
  }
}

/** The bytes of all pieces, one after another. */
export async function* piecesInOrder(folder: string, pieces: readonly FrameRange[]): AsyncGenerator<Buffer> {
  for (const { first } of pieces) yield* createReadStream(pieceFile(folder, first));
}
