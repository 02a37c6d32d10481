import { type LandmarkName, landmarkNames } from '../marks/landmark';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { MarkingError } from '../uncertainty/marking-error';
import { sdOfConfidence, sureEnough } from './follow-confidence';

export interface KnownPostures {
  /** Ascending by frame: the coach's points, and where there are none the surely followed ones. */
  readonly postures: readonly Posture[];
  /** Standard deviation of one point of these, pixels, by landmark: marked and followed ones together. */
  readonly landmarkSd: Readonly<Record<LandmarkName, number>>;
}

/** Followed points err alike over some frames, so that many of them say less than as many marks: their spread counts double. Our default. */
const alikeness = 2;

/**
 * What readings may use of a swim's body: every marked point, and followed ones that are sure enough, on frames where
 * the coach has neither placed nor hidden that landmark. A followed point errs by what re-marking found, or by what its
 * own confidence says where that is more.
 */
export function knownPostures(
  swim: Pick<Swim, 'postures' | 'followed'>,
  error: MarkingError,
  bodyLength: number | null,
): KnownPostures {
  const byFrame = new Map<number, Posture>();
  for (const posture of swim.postures) byFrame.set(posture.frame, posture);
  if (swim.followed.length === 0 || bodyLength === null)
    return { postures: inOrder(byFrame), landmarkSd: error.landmarkSd };
  const marked = new Map(byFrame);
  const counts = new Map<LandmarkName, { marks: number; followed: number; square: number }>();
  for (const name of landmarkNames) {
    const marks = swim.postures.filter((posture) => posture.points[name]).length;
    counts.set(name, { marks, followed: 0, square: 0 });
  }
  for (const { landmark, frame, points } of swim.followed) {
    const count = counts.get(landmark);
    points.forEach(([x, y, confidence], i) => {
      const own = marked.get(frame + i);
      if (confidence < sureEnough || own?.points[landmark] || own?.hidden.includes(landmark)) return;
      const before = byFrame.get(frame + i) ?? { frame: frame + i, points: {}, hidden: [] };
      byFrame.set(frame + i, { ...before, points: { ...before.points, [landmark]: { x, y } } });
      if (!count) return;
      count.followed += 1;
      count.square += Math.max(error.followedSd[landmark], sdOfConfidence(confidence, bodyLength)) ** 2;
    });
  }
  const landmarkSd = Object.fromEntries(
    landmarkNames.map((name) => {
      const { marks, followed, square } = counts.get(name) ?? { marks: 0, followed: 0, square: 0 };
      const own = error.landmarkSd[name];
      const all = marks + followed;
      return [name, all === 0 ? own : Math.sqrt((marks * own ** 2 + alikeness ** 2 * square) / all)];
    }),
  ) as Record<LandmarkName, number>;
  return { postures: inOrder(byFrame), landmarkSd };
}

const inOrder = (byFrame: ReadonlyMap<number, Posture>): readonly Posture[] =>
  [...byFrame.values()].sort((a, b) => a.frame - b.frame);
