import { type LandmarkName, landmarkNames } from '../marks/landmark';
import { hasPoint } from '../swim-file/has-point';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { MarkingError } from '../uncertainty/marking-error';
import { expectedErrorShare } from './expected-error';
import { sureEnough } from './follow-confidence';

export interface KnownPostures {
  /** Ascending by frame: the coach's points, and where there are none the surely followed ones. */
  readonly postures: readonly Posture[];
  /** Landmarks that are followed and not marked, by frame. */
  readonly followed: ReadonlyMap<number, readonly LandmarkName[]>;
  /** Standard deviation of one followed coordinate, pixels, by landmark: root mean square over the points used. */
  readonly followedSd: Readonly<Record<LandmarkName, number>>;
  /** What is called followed was seen without a mark. */
  readonly fromSeen: boolean;
}

/** Lines of the coach that following works between: from so many on, what was seen without a mark is read no longer. */
const linesToFollow = 2;

/** Whether a swim's readings look at seen points: while there is nothing followed, and too little marked to follow. */
const looksAtSeen = ({ postures, followed, seen }: Pick<Swim, 'postures' | 'followed' | 'seen'>): boolean =>
  seen.length > 0 && followed.length === 0 && postures.filter(hasPoint).length < linesToFollow;

/**
 * What readings may use of a swim's body: every marked point, and followed ones that are sure enough (the surest where
 * runs overlap), on frames where the coach has neither placed nor hidden that landmark. A followed point errs by what
 * re-marking found, or by what its own confidence says where that is more.
 *
 * @param bodyLength fingertip to toe, pixels; null: not known, and confidences then say nothing about pixels
 */
export function knownPostures(
  swim: Pick<Swim, 'postures' | 'followed' | 'seen'>,
  error: MarkingError,
  bodyLength: number | null,
): KnownPostures {
  const followed = new Map<number, LandmarkName[]>();
  const rising = swim.postures.every((each, i) => each.frame > (swim.postures[i - 1]?.frame ?? -1));
  if (looksAtSeen(swim)) return seenPostures(swim, error);
  if (swim.followed.length === 0 && rising)
    return { postures: swim.postures, followed, followedSd: error.followedSd, fromSeen: false };
  const byFrame = new Map<number, Posture>();
  for (const posture of swim.postures) byFrame.set(posture.frame, posture);
  const marked = new Map(byFrame);
  const sure = new Map<number, Map<LandmarkName, readonly [number, number, number]>>();
  for (const { landmark, frame, points } of swim.followed)
    points.forEach((point, i) => {
      const own = marked.get(frame + i);
      if (point[2] < sureEnough || own?.points[landmark] || own?.hidden.includes(landmark)) return;
      const row = sure.get(frame + i) ?? new Map<LandmarkName, readonly [number, number, number]>();
      sure.set(frame + i, row);
      if (point[2] > (row.get(landmark)?.[2] ?? 0)) row.set(landmark, point);
    });
  const squares = new Map<LandmarkName, { sum: number; count: number }>();
  for (const [frame, row] of sure) {
    const before = byFrame.get(frame) ?? { frame, points: {}, hidden: [] };
    const points = { ...before.points };
    for (const [landmark, [x, y, confidence]] of row) {
      points[landmark] = { x, y };
      const spread = bodyLength === null ? 0 : bodyLength * expectedErrorShare(confidence);
      const square = squares.get(landmark) ?? { sum: 0, count: 0 };
      square.sum += Math.max(error.followedSd[landmark], spread) ** 2;
      square.count += 1;
      squares.set(landmark, square);
    }
    byFrame.set(frame, { ...before, points });
    followed.set(frame, [...row.keys()]);
  }
  const followedSd = Object.fromEntries(
    landmarkNames.map((name) => {
      const square = squares.get(name);
      return [name, square ? Math.sqrt(square.sum / square.count) : error.followedSd[name]];
    }),
  ) as Record<LandmarkName, number>;
  return { postures: inOrder(byFrame), followed, followedSd, fromSeen: false };
}

/** The coach's points, and where there are none the seen ones, each with its own spread. */
function seenPostures(
  { postures, seen }: Pick<Swim, 'postures' | 'seen'>,
  error: MarkingError,
): KnownPostures {
  const byFrame = new Map<number, Posture>(postures.map((posture) => [posture.frame, posture]));
  const from = new Map<number, LandmarkName[]>();
  const squares = new Map<LandmarkName, number[]>();
  for (const { landmark, frame: first, points } of seen)
    for (const [i, [x, y, sd]] of points.entries()) {
      const frame = first + i;
      const own = byFrame.get(frame) ?? { frame, points: {}, hidden: [] };
      if (own.points[landmark] || own.hidden.includes(landmark)) continue;
      byFrame.set(frame, { ...own, points: { ...own.points, [landmark]: { x, y } } });
      from.set(frame, [...(from.get(frame) ?? []), landmark]);
      squares.set(landmark, [...(squares.get(landmark) ?? []), sd * sd]);
    }
  const followedSd = Object.fromEntries(
    landmarkNames.map((name) => {
      const own = squares.get(name);
      return [
        name,
        own ? Math.sqrt(own.reduce((sum, each) => sum + each, 0) / own.length) : error.followedSd[name],
      ];
    }),
  ) as Record<LandmarkName, number>;
  return { postures: inOrder(byFrame), followed: from, followedSd, fromSeen: true };
}

const inOrder = (byFrame: ReadonlyMap<number, Posture>): readonly Posture[] =>
  [...byFrame.values()].sort((a, b) => a.frame - b.frame);
