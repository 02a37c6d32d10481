import { type EventKind, eventKinds } from '../marks/event-kind';
import { type LandmarkName, landmarkNames } from '../marks/landmark';
import { seededUniform } from './seeded-uniform';
import type { EventMark, Swim } from '../swim-file/swim-schema';
import { type ClipClock, frameAtRealTime, realTimeOf } from '../timeline/clip-clock';
import type { Point } from '../units/point';

/** A moment to be marked again: somewhere in frames `first` to `last`, which hold one mark of its kind only. */
export interface MomentItem {
  readonly of: 'event';
  readonly eventId: string;
  readonly kind: EventKind;
  readonly hand: EventMark['hand'];
  /** Frame of the first mark; never shown. */
  readonly frame: number;
  readonly first: number;
  readonly last: number;
}

/** Points to be marked again on one frame: the coach's own, or ones that were followed there. */
export interface PointsItem {
  readonly of: 'marked' | 'followed';
  readonly frame: number;
  /** First marks; never shown. */
  readonly points: readonly { readonly landmark: LandmarkName; readonly x: number; readonly y: number }[];
}

export type RemarkingItem = MomentItem | PointsItem;

export interface RemarkingChoice {
  /** From the border: chooses what is marked again and how far off each loop begins and ends. */
  readonly seed: number;
  /** How many of each to draw at most. */
  readonly moments: number;
  readonly bodyLines: number;
  readonly followed: number;
}

/**
 * A loop reaches so far before and after the mark, real seconds, each side drawn by itself, so that neither its start,
 * its end nor its middle tells where the mark was. Our defaults: long enough to see what happens, short of a kick.
 */
const shortestReach = 0.1;
const longestReach = 0.4;

/**
 * A random choice of what was marked, in random order, to be marked again unseen. Kinds take turns, so that a rare
 * kind is drawn as soon as a common one. Moments whose instant was taken from a proposal are not the coach's own marking
 * and are left out, as are moments too close to another of their kind to have a loop of their own; followed points are
 * taken only from frames on which the coach has marked nothing.
 */
export function remarkingPlan(
  swim: Swim,
  clock: ClipClock,
  choice: RemarkingChoice,
): readonly RemarkingItem[] {
  const uniform = seededUniform(choice.seed);
  const moments = takeTurns(
    eventKinds.map((kind) => shuffled(momentsOf(swim, kind, clock, uniform), uniform)),
    choice.moments,
  );
  const bodyLines = shuffled(bodyLineItems(swim), uniform).slice(0, choice.bodyLines);
  const followed = shuffled(followedItems(swim), uniform).slice(0, choice.followed);
  return shuffled<RemarkingItem>([...moments, ...bodyLines, ...followed], uniform);
}

/** How many of each there are to choose from. */
export function remarkable(
  swim: Swim,
  clock: ClipClock,
): Readonly<Record<'moments' | 'bodyLines' | 'followed', number>> {
  const uniform = seededUniform(0);
  return {
    moments: eventKinds.reduce((sum, kind) => sum + momentsOf(swim, kind, clock, uniform).length, 0),
    bodyLines: bodyLineItems(swim).length,
    followed: followedItems(swim).length,
  };
}

function momentsOf(swim: Swim, kind: EventKind, clock: ClipClock, uniform: () => number): MomentItem[] {
  const alike = swim.events.filter((each) => each.kind === kind).sort((a, b) => a.frame - b.frame);
  const end = clock.table.starts.length - 1;
  return alike.flatMap((mark, i): MomentItem[] => {
    if (mark.refined) return [];
    // up to half way to the neighbours, so that only one mark of the kind is in the loop
    const least = midway(alike[i - 1]?.frame ?? null, mark.frame) ?? 0;
    const most = midway(mark.frame, alike[i + 1]?.frame ?? null) ?? end;
    const time = realTimeOf(clock, mark.frame);
    const reach = (): number => shortestReach + (longestReach - shortestReach) * uniform();
    const first = Math.max(least, frameAtRealTime(clock, time - reach()));
    const last = Math.min(most, frameAtRealTime(clock, time + reach()));
    const inside = mark.frame >= first && mark.frame <= last && last - first >= 2;
    return inside
      ? [{ of: 'event', eventId: mark.id, kind, hand: mark.hand, frame: mark.frame, first, last }]
      : [];
  });
}

/** Frame half way between two marks; null when one is not there. */
const midway = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : Math.floor((a + b) / 2);

function bodyLineItems(swim: Swim): PointsItem[] {
  return swim.postures.flatMap((posture): PointsItem[] => {
    const points = pointsOf((name) => posture.points[name] ?? null);
    return points.length > 0 ? [{ of: 'marked', frame: posture.frame, points }] : [];
  });
}

/** Our default: followed frames farther apart than this are taken as different looks, at 60 a second a sixth of one. */
const followedStep = 10;

function followedItems(swim: Swim): PointsItem[] {
  const marked = new Set(swim.postures.map((posture) => posture.frame));
  const byFrame = new Map<number, Map<LandmarkName, Point>>();
  for (const run of swim.followed)
    run.points.forEach(([x, y], i) => {
      const frame = run.frame + i;
      if (frame % followedStep !== 0 || marked.has(frame)) return;
      const found = byFrame.get(frame) ?? new Map<LandmarkName, Point>();
      byFrame.set(frame, found.set(run.landmark, { x, y }));
    });
  return [...byFrame].map(([frame, found]) => ({
    of: 'followed',
    frame,
    points: pointsOf((name) => found.get(name) ?? null),
  }));
}

const pointsOf = (at: (name: LandmarkName) => Point | null): PointsItem['points'] =>
  landmarkNames.flatMap((landmark) => {
    const point = at(landmark);
    return point ? [{ landmark, x: point.x, y: point.y }] : [];
  });

/** Fisher–Yates, by the numbers given. */
function shuffled<T>(all: readonly T[], uniform: () => number): T[] {
  const out = [...all];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    const kept = out[i] as T;
    out[i] = out[j] as T;
    out[j] = kept;
  }
  return out;
}

/** One from each row in turn until `most` are taken. */
function takeTurns<T>(rows: readonly (readonly T[])[], most: number): T[] {
  const out: T[] = [];
  const longest = Math.max(0, ...rows.map((row) => row.length));
  for (let i = 0; i < longest; i++) for (const row of rows) out.push(...row.slice(i, i + 1));
  return out.slice(0, most);
}
