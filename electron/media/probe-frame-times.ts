import { failure, type Result, success } from '#core/host-contract/host-error';
import type { FrameTable } from '#core/timeline/frame-table';
import { type CodedPicture, orderPictures } from '#core/timeline/picture-order';
import { type MediaRun, runMediaTool } from './run-media-tool';
import { filmStream } from './film-stream';
import { pairFields } from './pair-fields';

/** One tick of a stream's clock: `numerator / denominator` seconds. */
export interface TimeBase {
  readonly numerator: number;
  readonly denominator: number;
}

/** An ffprobe time base such as "1001/24000"; null when it is none. */
export function timeBaseOf(text: string | undefined): TimeBase | null {
  const found = /^(\d+)\/(\d+)$/.exec(text ?? '');
  const [numerator, denominator] = [Number(found?.[1]), Number(found?.[2])];
  return numerator > 0 && denominator > 0 ? { numerator, denominator } : null;
}

export interface ListedFilm {
  readonly table: FrameTable;
  /** Pictures, or fields in packets of their own, that the file lists and holds; shown or not. */
  readonly packets: number;
  /** The reader missed bytes that the file lists. */
  readonly cut: boolean;
}

type Listing = MediaRun & {
  /** Parameter sets of H.264 that may be coded as fields: then fields are put together to frames. */
  readonly fieldSets?: Uint8Array | null;
};

/** The frame table alone. */
export async function probeFrameTimes(
  file: string,
  track: number,
  base: TimeBase,
  options: Listing = {},
): Promise<Result<FrameTable>> {
  const listed = await listFilm(file, track, base, options);
  return listed.ok ? success(listed.value.table) : listed;
}

/**
 * The frame table of a film track as ffprobe sees it, by the same rules as the window's own: for files the window can't
 * read, and as the outside check of a working copy. `track` counts film tracks from 1. Packets are read, not decoded;
 * a film whose packets carry no showing times (some AVI and MPEG program streams) is decoded once for them.
 */
export async function listFilm(
  file: string,
  track: number,
  base: TimeBase,
  options: Listing,
): Promise<Result<ListedFilm>> {
  let cut = false;
  const packetsListed = await listRows(file, track, 'packet=pts,duration,size,flags', {
    ...options,
    onComplaint: (line) => {
      cut ||= line.includes('partial file');
    },
  });
  if (!packetsListed.ok) return packetsListed;
  const { fieldSets = null } = options;
  const listed = fieldSets
    ? await wholeFrames(file, track, packetsListed.value, fieldSets, options.signal)
    : packetsListed.value;
  const timed = listed?.every(([time]) => time !== null) === true;
  const rows = timed
    ? success(listed)
    : await listRows(file, track, 'frame=best_effort_timestamp,pkt_duration,key_frame', options);
  if (!rows.ok) return rows;
  const pictures = timed ? packets(rows.value, base) : decodedPictures(rows.value, base);
  const { table } = orderPictures(pictures, base.denominator);
  return table.starts.length > 0
    ? success({ table, packets: packetsListed.value.length, cut })
    : failure('truncated');
}

/**
 * Packets put together to frames, each with the time of its first field; a field without its other one is no frame, as
 * decoders give none of it. Null where that can't be told from the packets.
 */
async function wholeFrames(
  file: string,
  track: number,
  rows: Listed,
  sets: Uint8Array,
  signal?: AbortSignal,
): Promise<Listed | null> {
  const sizes = rows.map(([, , , size]) => size);
  const parts = await pairFields(file, track, sizes, sets, signal);
  return (
    parts &&
    rows.flatMap((row, n): Listed => {
      const [time, duration, flags, size] = row;
      const part = parts[n];
      if (part === 'frame') return [row];
      if (part !== 'first-field') return [];
      const other = rows[n + 1]?.[1] ?? null;
      // where the file gives only one length, it counts for the other field's too
      const both =
        duration === null && other === null ? null : (duration ?? other ?? 0) + (other ?? duration ?? 0);
      return [[time, both, flags, size]];
    })
  );
}

function packets(rows: Listed, { numerator }: TimeBase): CodedPicture[] {
  return rows.map(([time, duration, flags]) => ({
    // what an edit list hides is decoded and never shown: it stands before everything
    tick: flags.includes('D') ? Number.MIN_SAFE_INTEGER : (time ?? 0) * numerator,
    durationTicks: (duration ?? 0) * numerator,
    key: flags.includes('K'),
  }));
}

/** Decoded pictures in showing order; one without a time (the last, as a rule) follows the one before it. */
function decodedPictures(rows: Listed, { numerator }: TimeBase): CodedPicture[] {
  let next = 0;
  return rows.map(([time, duration]) => {
    const tick = (time ?? next) * numerator;
    next = (time ?? next) + Math.max(1, duration ?? 1);
    return { tick, durationTicks: (duration ?? 0) * numerator, key: true };
  });
}

type Listed = readonly Row[];
type Row = readonly [time: number | null, duration: number | null, flags: string, size: number];

/** One row a packet or frame; what side data adds to a line is passed over. */
async function listRows(
  file: string,
  track: number,
  entries: string,
  options: MediaRun,
): Promise<Result<Listed>> {
  const rows: Row[] = [];
  const run = await runMediaTool(
    'ffprobe',
    [
      ...['-v', 'error', '-select_streams', filmStream(track)],
      ...['-show_entries', entries, '-of', 'compact=p=1', '-i', `file:${file}`],
    ],
    {
      ...options,
      maxOutput: 1_000_000_000,
      onLine: (line) => {
        if (!/^(packet|frame)\|/.test(line)) return;
        const field = (name: RegExp): string | undefined => name.exec(line)?.[1];
        const number = (text: string | undefined): number | null =>
          text === undefined ? null : Number(text);
        rows.push([
          number(field(/\|(?:pts|best_effort_timestamp)=(-?\d+)/)),
          number(field(/\|(?:duration|pkt_duration)=(\d+)/)),
          field(/\|flags=([A-Z_]+)/) ?? '',
          Number(field(/\|size=(\d+)/) ?? 0),
        ]);
      },
    },
  );
  return run.ok ? success(rows) : run;
}
