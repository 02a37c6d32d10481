import { confidenceOfSd, sureEnough } from '#core/follow/follow-confidence';
import { armLandmarks } from '#core/follow/limb';
import { proposeEvents } from '#core/follow/propose-events';
import type { EventKind } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { naturalSpline } from '#core/signal/cubic-spline';
import type { FollowedRun, Posture, Swim } from '#core/swim-file/swim-schema';
import { frameAtRealTime, localFrameInterval, realTimeOf } from '#core/timeline/clip-clock';
import type { Truth } from '../../../sample-clips/truth-schema';
import { type DrawnCoach, trueAt } from './follow-coach';
import { followedSwim, kickMark, type SeenCamera } from './followed-swim';

export interface Score {
  readonly points: number;
  readonly rmsPixels: number;
  /** Percent of the body length. */
  readonly rms: number;
  readonly rmsSure: number;
  readonly rmsTrunkAndLegs: number;
  /** Percent of the points. */
  readonly flagged: number;
  readonly off: number;
  /** Percent of the points off by more than 2 % that were flagged; null when none was off. */
  readonly caught: number | null;
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));

/** What one coach's marks and following came to. */
export interface FollowedMarks {
  readonly postures: readonly Posture[];
  readonly followed: readonly FollowedRun[];
}

/** How far followed points lie from the drawn truth, the coach's own marks left out. */
export const scoreOf = (
  truth: Truth,
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
): Score => pooledScore(truth, [{ postures, followed }]);

/** The same of several coaches' marks on one film, all points together. */
export function pooledScore(truth: Truth, coaches: readonly FollowedMarks[]): Score {
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  const all = coaches.flatMap(({ postures, followed }) => {
    const marked = new Set(
      postures.flatMap(({ frame, points }) => Object.keys(points).map((name) => `${name}${frame}`)),
    );
    return followed.flatMap(({ landmark, frame, points }) =>
      points.flatMap(([x, y, confidence], i) => {
        if (marked.has(`${landmark}${frame + i}`)) return [];
        const at = trueAt(truth, frame + i, landmark);
        return [{ landmark, error: Math.hypot(x - at.x, y - at.y), confidence }];
      }),
    );
  });
  const percent = (each: { readonly error: number }): number => (100 * each.error) / length;
  const off = all.filter((each) => percent(each) > 2);
  const isFlagged = (each: { readonly confidence: number }): boolean => each.confidence < sureEnough;
  return {
    points: all.length,
    rmsPixels: rootMeanSquare(all.map(({ error }) => error)),
    rms: rootMeanSquare(all.map(percent)),
    rmsSure: rootMeanSquare(all.filter((each) => !isFlagged(each)).map(percent)),
    rmsTrunkAndLegs: rootMeanSquare(all.filter((each) => !armLandmarks.has(each.landmark)).map(percent)),
    flagged: (100 * all.filter(isFlagged).length) / Math.max(1, all.length),
    off: (100 * off.length) / Math.max(1, all.length),
    caught: off.length > 0 ? (100 * off.filter(isFlagged).length) / off.length : null,
  };
}

/** Marking every fifth frame with a natural cubic spline between. */
export function splineRuns(
  truth: Truth,
  coach: DrawnCoach,
  first: number,
  last: number,
): { readonly runs: readonly FollowedRun[]; readonly clicksEach: number } {
  const frames: number[] = [];
  for (let frame = first; frame <= last; frame += 5) frames.push(frame);
  const times = frames.map((frame) => truth.realTimes[frame] ?? 0);
  const runs = landmarkNames.map((landmark): FollowedRun => {
    const marks = frames.map((frame) => coach.mark(frame, landmark));
    const x = naturalSpline(
      times,
      marks.map((mark) => mark.x),
    );
    const y = naturalSpline(
      times,
      marks.map((mark) => mark.y),
    );
    const end = frames.at(-1) ?? first;
    return {
      landmark,
      frame: first,
      points: Array.from({ length: end - first + 1 }, (_, i) => {
        const time = truth.realTimes[first + i] ?? 0;
        return [x(time), y(time), confidenceOfSd(0, 1)];
      }),
    };
  });
  return { runs, clicksEach: frames.length };
}

export interface ReadingErrors {
  /** Percent of the truth; null when the reading can't be had. */
  readonly frequency: number | null;
  readonly amplitude: number | null;
  /** Speed of the hips: what is read, its 95 % interval, and what is read of the drawn points in the pool, m/s. */
  readonly speed: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly drawn: number;
  } | null;
}

export interface ProposalScore {
  readonly kind: EventKind;
  /** True moments inside the followed film, how many of them were proposed, and proposals of nothing. */
  readonly there: number;
  readonly found: number;
  readonly wrong: number;
  /** Seconds, later positive; and each in its own standard deviations. */
  readonly errors: readonly number[];
  readonly inSds: readonly number[];
}

/** Kinds of moment that are proposed. */
export const proposedKinds: readonly EventKind[] = [
  'kick-top',
  'kick-bottom',
  'entry',
  'catch',
  'shoulder',
  'navel',
  'exit',
];

/** Nearer than this to a true moment of its kind a proposal means that moment. Our choice. */
const meant = 0.1;

/** Every proposal against the drawn moments, kind by kind. */
export function proposalScores(
  truth: Truth,
  width: number,
  height: number,
  arms: 'stroking' | 'stretched',
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
  camera?: SeenCamera,
): readonly ProposalScore[] {
  const { swim, clock } = followedSwim(truth, width, height, arms, postures, followed, camera);
  // the less sure ones are for the coach's eye alone
  const proposals = proposeEvents(swim, clock).filter(({ unsure }) => !unsure);
  const frames = postures.map(({ frame }) => frame);
  const [from, to] = [Math.min(...frames), Math.max(...frames)].map((frame) => truth.realTimes[frame] ?? 0);
  const kinds = new Set(proposals.map(({ kind }) => kind));
  return proposedKinds.flatMap((kind): ProposalScore[] => {
    // a turn at the very edge of what is followed can't be seen as one
    const there = truth.events.filter(
      (each) => each.kind === kind && each.time > (from ?? 0) + meant && each.time < (to ?? 0) - meant,
    );
    if (there.length === 0 && !kinds.has(kind)) return [];
    const own = proposals.filter((each) => each.kind === kind);
    const pairs = there.flatMap(({ time }) => {
      const near = own.filter((each) => Math.abs(each.time - time) < meant);
      const best = near.sort((a, b) => Math.abs(a.time - time) - Math.abs(b.time - time))[0];
      return best ? [{ error: best.time - time, sd: best.sdSeconds }] : [];
    });
    const all = truth.events.filter((each) => each.kind === kind);
    return [
      {
        kind,
        there: there.length,
        found: pairs.length,
        wrong: own.filter((each) => !all.some(({ time }) => Math.abs(each.time - time) < meant)).length,
        errors: pairs.map(({ error }) => error),
        inSds: pairs.map(({ error, sd }) => error / sd),
      },
    ];
  });
}

/**
 * What the readings say when every proposed kick is accepted, against what they say of the drawn points and moments of
 * the same film: kicks of one stroke differ, so no single figure of the drawing is the truth of a mean.
 */
export function readingErrors(
  truth: Truth,
  width: number,
  height: number,
  arms: 'stroking' | 'stretched',
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
  camera?: SeenCamera,
): ReadingErrors {
  const { swim, clock } = followedSwim(truth, width, height, arms, postures, followed, camera);
  const kicks = proposeEvents(swim, clock).filter(({ kind }) => kind.startsWith('kick'));
  const frames = postures.map(({ frame }) => frame);
  const [first, last] = [Math.min(...frames), Math.max(...frames)];
  const rate = 1 / localFrameInterval(clock, first);
  const drawn: Swim = {
    ...swim,
    followed: [],
    cameraPath: [],
    postures: Array.from({ length: last - first + 1 }, (_, i) => ({
      frame: first + i,
      hidden: [],
      // where a camera that stands would have seen them
      points: Object.fromEntries(
        landmarkNames.map((name) => {
          const { x, y } = trueAt(truth, first + i, name);
          return [name, { x: x + carriedPixels(truth, first + i), y }];
        }),
      ),
    })),
    events: truth.events.flatMap(({ kind, time }, i) => {
      const frame = frameAtRealTime(clock, time);
      const inside = kind.startsWith('kick') && frame >= first && frame < last;
      const frames = (time - realTimeOf(clock, frame)) * rate;
      return inside ? [kickMark(`t${i}`, kind, frame, frames, 0.001)] : [];
    }),
  };
  const seen: Swim = {
    ...swim,
    events: kicks.map(({ kind, frame, frames: part, sdSeconds }, i) =>
      kickMark(`k${i}`, kind, frame, part, sdSeconds),
    ),
  };
  const readingOf = (of: Swim, id: string): number | null => {
    const readings = computeReadings(readingContext(of, { swimmer: null, markingError: null }));
    const found = readings.find((each) => each.id === id);
    return found?.status === 'computed' ? found.value : null;
  };
  const error = (id: string): number | null => {
    const [is, should] = [readingOf(seen, id), readingOf(drawn, id)];
    return is === null || should === null ? null : 100 * Math.abs(is / should - 1);
  };
  const speeds = [seen, drawn].map((of) =>
    computeReadings(readingContext(of, { swimmer: null, markingError: null })).find(
      ({ id }) => id === 'speed-hip',
    ),
  );
  const [read, should] = speeds;
  const speed =
    read?.status === 'computed' && should?.status === 'computed'
      ? { value: read.value, low: read.interval.low, high: read.interval.high, drawn: should.value }
      : null;
  return { frequency: error('kick-frequency'), amplitude: error('kick-amplitude-toe'), speed };
}

/** How far a carried camera has gone along the picture by a frame, pixels in the swimmer's plane. */
export const carriedPixels = (truth: Truth, frame: number): number =>
  ((truth.travel === 'left' ? -1 : 1) * (truth.carriedMetres?.[frame] ?? 0)) / truth.metresPerPixel;
