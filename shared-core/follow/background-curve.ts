import { naturalSpline } from '../signal/cubic-spline';
import type { CameraRun } from '../swim-file/swim-schema';
import type { Point } from '../units/point';

/** How the background moved over frames that hang together, pixels of the picture. */
export interface BackgroundCurve {
  readonly first: number;
  readonly last: number;
  /** Since the first of its frames; only from `first` to `last`. */
  at(frame: number): Point;
}

export interface Background {
  /** In the order of their frames; between them nothing is known. */
  readonly curves: readonly BackgroundCurve[];
  /** Standard deviation of a place on a curve, pixels. */
  readonly sd: number;
  /** How far it went at most over all that is known, pixels. */
  readonly range: number;
}

/** Nothing is told better than this, pixels. Our default. */
const leastSd = 0.5;
/** Two rows that agree best of many agree a little by chance: their disagreement counts so many times. Our default. */
const chosenTimes = 1.5;
/** With a single row there is none to compare it with: it is taken to be off by this share of its way. Our default. */
const loneShare = 0.03;

/**
 * One way of the background out of what was seen in several rows of the picture. Light that runs over the floor and
 * waves on the surface drag their rows along, each in its own way; what stands still in the pool moves alike, however far
 * behind the swimmer it is: the two rows that agree best are believed, and what they differ by is the error. Where two rows
 * stay within `still` pixels all along, the camera did: no moving one leaves two where they were. Null where no row is known on all
 * runs. Looked for once for the same runs.
 */
export function backgroundCurve(runs: readonly CameraRun[], still: number): Background | null {
  const known = kept.get(runs);
  if (known?.still === still) return known.background;
  const background = findBackground(runs, still);
  kept.set(runs, { still, background });
  return background;
}

const kept = new WeakMap<
  readonly CameraRun[],
  { readonly still: number; readonly background: Background | null }
>();

function findBackground(runs: readonly CameraRun[], still: number): Background | null {
  const sorted = [...runs].sort((a, b) => (a.frames[0] as number) - (b.frames[0] as number));
  const moving = sorted.filter(({ rows }) => rows.length > 0);
  const common = (moving[0]?.rows ?? []).filter((row) => moving.every(({ rows }) => rows.includes(row)));
  if (moving.length === 0) return { curves: joined(sorted, null), sd: leastSd, range: 0 };
  const stood = common
    .map((each) => joined(sorted, each))
    .map((curves) => ({ curves, range: rangeOf(curves) }))
    .filter(({ range }) => range < still)
    .sort((a, b) => a.range - b.range);
  const [least] = stood;
  if (least && stood.length >= 2) return { ...least, sd: leastSd };
  const pairs = common.flatMap((row, i) =>
    common.slice(i + 1).map((other) => ({ row, ...agreement(moving, row, other) })),
  );
  const best = pairs.sort((a, b) => a.share - b.share)[0];
  const row = best?.row ?? common[0];
  if (row === undefined) return null;
  const curves = joined(sorted, row);
  const range = rangeOf(curves);
  return { curves, sd: Math.max(leastSd, best ? chosenTimes * best.sd : loneShare * range), range };
}

const rowOf = (run: CameraRun, row: number): CameraRun['moved'][number] =>
  run.moved[run.rows.indexOf(row)] ?? [];

/** How two rows agree over all runs once the one is made as long as the other: error of the first, pixels, and as a share of its way. */
function agreement(
  runs: readonly CameraRun[],
  row: number,
  other: number,
): { readonly sd: number; readonly share: number } {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const run of runs) {
    xs.push(...fromMean(rowOf(run, row)));
    ys.push(...fromMean(rowOf(run, other)));
  }
  const xx = xs.reduce((sum, x) => sum + x * x, 0);
  const yy = ys.reduce((sum, y) => sum + y * y, 0);
  const xy = xs.reduce((sum, x, i) => sum + x * (ys[i] as number), 0);
  // both axes count, so a frame has two numbers
  const left = yy > 0 ? Math.max(0, xx - (xy * xy) / yy) : xx;
  const sd = Math.sqrt(left / Math.max(1, xs.length / 2 - 2));
  return { sd, share: xx > 0 && yy > 0 ? Math.max(left / xx, leastSd ** 2 / Math.min(xx, yy)) : 1 };
}

/** Each way less its mean, x and y one after the other. */
function fromMean(way: CameraRun['moved'][number]): readonly number[] {
  const n = Math.max(1, way.length);
  const x = way.reduce((sum, each) => sum + each[0], 0) / n;
  const y = way.reduce((sum, each) => sum + each[1], 0) / n;
  return way.flatMap((each) => [each[0] - x, each[1] - y]);
}

/** Runs that share a frame hang together. */
function joined(runs: readonly CameraRun[], row: number | null): readonly BackgroundCurve[] {
  const chains: CameraRun[][] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const run of runs) {
    const first = run.frames[0] as number;
    if (first <= end) chains.at(-1)?.push(run);
    else chains.push([run]);
    end = Math.max(first <= end ? end : Number.NEGATIVE_INFINITY, run.frames.at(-1) ?? first);
  }
  return chains.map((chain) => curveOf(chain, row));
}

function curveOf(chain: readonly CameraRun[], row: number | null): BackgroundCurve {
  const frames: number[] = [];
  const x: number[] = [];
  const y: number[] = [];
  for (const run of chain) {
    const begin = run.frames[0] as number;
    const before = frames.length > 0 ? curveThrough(frames, x, y)(begin) : { x: 0, y: 0 };
    const way = row === null ? [] : rowOf(run, row);
    run.frames.forEach((frame, i) => {
      if (frame <= (frames.at(-1) ?? Number.NEGATIVE_INFINITY)) return;
      frames.push(frame);
      x.push(before.x + (way[i]?.[0] ?? 0));
      y.push(before.y + (way[i]?.[1] ?? 0));
    });
  }
  return { first: frames[0] as number, last: frames.at(-1) ?? 0, at: curveThrough(frames, x, y) };
}

function curveThrough(
  frames: readonly number[],
  x: readonly number[],
  y: readonly number[],
): (frame: number) => Point {
  const [across, down] = [naturalSpline(frames, x), naturalSpline(frames, y)];
  return (frame) => ({ x: across(frame), y: down(frame) });
}

function rangeOf(curves: readonly BackgroundCurve[]): number {
  return Math.max(
    0,
    ...curves.map(({ first, last, at }) => {
      const places = Array.from({ length: last - first + 1 }, (_, i) => at(first + i));
      const reach = (of: readonly number[]): number => Math.max(...of) - Math.min(...of);
      return Math.hypot(reach(places.map(({ x }) => x)), reach(places.map(({ y }) => y)));
    }),
  );
}
