import type { FrameTable } from './frame-table';

/** One coded picture as the container lists it; lists of these are in decoding order. */
export interface CodedPicture {
  /** Start of showing, in the track's ticks; may be negative (an edit list hides it). */
  readonly tick: number;
  readonly durationTicks: number;
  /** Whether decoding may begin here. */
  readonly key: boolean;
}

/** Which coded pictures are shown, in which order, and where decoding must begin to get each. */
export interface PictureOrder {
  readonly table: FrameTable;
  /** Position in decoding order of each frame. */
  readonly codedOfFrame: readonly number[];
  /** Position in decoding order of the key picture from which each frame can be decoded. */
  readonly keyOfFrame: readonly number[];
  /** Frame number of each coded picture, or -1 where it is not shown. */
  readonly frameOfCoded: readonly number[];
}

/**
 * Sorts a track's coded pictures (given in decoding order) into the frames that are shown. The rules:
 *
 * - A frame is shown when it starts at or after tick 0 and before `endTick` (where an edit list ends the showing).
 *   Pictures before are lead-in: decoded, never shown. An edit list that would hide everything is taken as damaged
 *   and ignored.
 * - What comes before the first key picture, in decoding order or in showing order, can't be decoded by anyone and
 *   is no frame.
 * - Of pictures starting on the same tick one is a frame, as no more can be told apart by their time: the first that a
 *   decoder gives out, so that player, stills, videos and ffmpeg show the same one. Where pictures are coded in another
 *   order than shown that is the last coded (the one it leans on comes before it), else the first.
 * - A frame is decoded from the last key picture that comes no later than it in decoding order AND in showing order:
 *   pictures that follow a key picture but are shown before it (an open group) lean on the group before.
 *
 * The last frame lasts its own duration; where the file gives none, as long as the median gap, or one tick.
 */
export function orderPictures(
  pictures: readonly CodedPicture[],
  ticksPerSecond: number,
  endTick: number = Number.POSITIVE_INFINITY,
): PictureOrder {
  const firstKey = pictures.findIndex((picture) => picture.key);
  const firstTick = pictures[firstKey]?.tick ?? 0;
  const decodable = pictures
    .map((picture, coded) => ({ tick: picture.tick, coded }))
    .filter(({ tick, coded }) => firstKey >= 0 && coded >= firstKey && tick >= firstTick)
    .sort((a, b) => a.tick - b.tick || a.coded - b.coded);
  const inside = decodable.filter(({ tick }) => tick >= 0 && tick < endTick);
  const reordered = pictures.some(({ tick }, coded) => tick < (pictures[coded - 1]?.tick ?? tick));
  const twin = reordered ? 1 : -1;
  const shown = (inside.length > 0 ? inside : decodable).filter(
    ({ tick }, place, all) => all[place + twin]?.tick !== tick,
  );

  const starts = shown.map(({ tick }) => tick);
  const codedOfFrame = shown.map(({ coded }) => coded);
  const frameOfCoded = new Array<number>(pictures.length).fill(-1);
  codedOfFrame.forEach((coded, frame) => {
    frameOfCoded[coded] = frame;
  });

  const last = codedOfFrame.at(-1);
  const lastDuration = last === undefined ? 0 : (pictures[last]?.durationTicks ?? 0);
  const end =
    (starts.at(-1) ?? 0) +
    (lastDuration > 0 ? lastDuration : Math.max(1, Math.round(medianGap(starts) ?? 1)));
  return {
    table: { ticksPerSecond, starts, endTick: inside.length > 0 ? Math.min(end, endTick) : end },
    codedOfFrame,
    keyOfFrame: keysOf(pictures, codedOfFrame),
    frameOfCoded,
  };
}

function keysOf(pictures: readonly CodedPicture[], codedOfFrame: readonly number[]): number[] {
  const keyOfCoded = new Array<number>(pictures.length).fill(0);
  const keys: number[] = [];
  pictures.forEach((picture, coded) => {
    if (picture.key) keys.push(coded);
    let k = keys.length - 1;
    while (k > 0 && (pictures[keys[k] as number]?.tick ?? 0) > picture.tick) k -= 1;
    keyOfCoded[coded] = keys[k] ?? 0;
  });
  return codedOfFrame.map((coded) => keyOfCoded[coded] as number);
}

/** Median gap between neighbouring starts in ticks (mean of the middle two of an even count), or null below two. */
export function medianGap(starts: readonly number[]): number | null {
  if (starts.length < 2) return null;
  const gaps = starts.slice(1).map((start, i) => start - (starts[i] as number));
  gaps.sort((a, b) => a - b);
  const upper = gaps[gaps.length >> 1] as number;
  const lower = gaps[(gaps.length - 1) >> 1] ?? upper;
  return (lower + upper) / 2;
}

/** Whether all gaps between starts are equal within one tick: true for a clip of one picture. */
export function isEvenRate(table: FrameTable): boolean {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < table.starts.length; i++) {
    const gap = (table.starts[i] as number) - (table.starts[i - 1] as number);
    least = Math.min(least, gap);
    most = Math.max(most, gap);
  }
  return table.starts.length < 2 || most - least <= 1;
}

/** Of a clip's gaps, how many must be alike to be the rate: the others are pictures left out, as at a break (our default). */
const alikeShare = 0.9;

/**
 * Usual rate in pictures per media second. A variable-rate clip gives its median; where all gaps, or nearly all, differ by
 * no more than the rounding of the clock (29.97/s in milliseconds: 33 and 34), their mean, which is not rounded. A single
 * picture gives one over its duration.
 */
export function usualRate(table: FrameTable): number {
  const gaps = table.starts.length - 1;
  const first = table.starts[0] as number;
  if (gaps < 1) return table.ticksPerSecond / Math.max(1, table.endTick - first);
  const last = table.starts[gaps] as number;
  if (isEvenRate(table)) return (gaps * table.ticksPerSecond) / (last - first);
  const median = Math.max(1, medianGap(table.starts) ?? 1);
  const alike = table.starts
    .slice(1)
    .map((start, n) => start - (table.starts[n] as number))
    .filter((gap) => Math.abs(gap - median) <= 1);
  const ticks = alike.reduce((sum, gap) => sum + gap, 0);
  return alike.length >= alikeShare * gaps && ticks > 0
    ? (alike.length * table.ticksPerSecond) / ticks
    : table.ticksPerSecond / median;
}
