import { confidenceOfSd, sureEnough } from '#core/follow/follow-confidence';
import { proposeEvents } from '#core/follow/propose-events';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { naturalSpline } from '#core/signal/cubic-spline';
import { emptyScene, type FollowedRun, type Posture, type Swim } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { Truth } from '../../sample-clips/truth-schema';
import { aSwim } from '../shared-core/swim-file/a-swim';
import { type DrawnCoach, trueAt } from './follow-coach';

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

const armNames: ReadonlySet<LandmarkName> = new Set(['fingertip', 'wrist', 'elbow']);
const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length));

/** How far followed points lie from the drawn truth, the coach's own marks left out. */
export function scoreOf(truth: Truth, postures: readonly Posture[], followed: readonly FollowedRun[]): Score {
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  const marked = new Set(
    postures.flatMap(({ frame, points }) => Object.keys(points).map((name) => `${name}${frame}`)),
  );
  const all = followed.flatMap(({ landmark, frame, points }) =>
    points.flatMap(([x, y, confidence], i) => {
      if (marked.has(`${landmark}${frame + i}`)) return [];
      const at = trueAt(truth, frame + i, landmark);
      return [{ landmark, error: Math.hypot(x - at.x, y - at.y), confidence }];
    }),
  );
  const percent = (each: { readonly error: number }): number => (100 * each.error) / length;
  const off = all.filter((each) => percent(each) > 2);
  const isFlagged = (each: { readonly confidence: number }): boolean => each.confidence < sureEnough;
  return {
    points: all.length,
    rmsPixels: rootMeanSquare(all.map(({ error }) => error)),
    rms: rootMeanSquare(all.map(percent)),
    rmsSure: rootMeanSquare(all.filter((each) => !isFlagged(each)).map(percent)),
    rmsTrunkAndLegs: rootMeanSquare(all.filter((each) => !armNames.has(each.landmark)).map(percent)),
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
}

/** What the readings say when every proposed kick is accepted, against the truth. */
export function readingErrors(
  truth: Truth,
  width: number,
  height: number,
  rate: number,
  postures: readonly Posture[],
  followed: readonly FollowedRun[],
): ReadingErrors {
  const { starts, ticksPerSecond } = truth.frameTimes;
  const gap = (starts.at(-1) ?? 0) - (starts.at(-2) ?? 0);
  const table = { starts, ticksPerSecond, endTick: (starts.at(-1) ?? 0) + gap };
  const base = aSwim();
  const metres = 2;
  const swim: Swim = {
    ...base,
    clip: { ...base.clip, width, height, frameTimes: recordFromTable(table) },
    card: { ...base.card, aids: [], arms: 'stroking', view: 'side' },
    scene: {
      ...emptyScene,
      travel: truth.travel,
      scale: {
        line: { a: { x: 100, y: 600 }, b: { x: 100 + metres / truth.metresPerPixel, y: 600 } },
        metres,
        metresSd: 0,
        preset: null,
        frame: 0,
      },
    },
    events: [],
    postures: [...postures],
    followed: followed.map((run) => ({ ...run, points: [...run.points] })),
    dismissed: [],
  };
  const kicks = proposeEvents(swim, { table, slowdown: truth.slowdown }).filter(({ kind }) =>
    kind.startsWith('kick'),
  );
  const marked: Swim = {
    ...swim,
    events: kicks.map(({ kind, frame, frames, sdSeconds }, i) => ({
      id: `k${i}`,
      kind,
      frame,
      hand: null,
      breathTo: null,
      metres: null,
      from: 'proposal',
      refined: { frames, sdSeconds },
    })),
  };
  const readings = computeReadings(readingContext(marked, { swimmer: null, markingError: null }));
  const error = (id: string, true_: number): number | null => {
    const found = readings.find((each) => each.id === id);
    return found?.status === 'computed' ? 100 * Math.abs(found.value / true_ - 1) : null;
  };
  return {
    frequency: rate > 0 ? error('kick-frequency', truth.model.kickFrequencyHz) : null,
    amplitude: error('kick-amplitude-toe', truth.model.kickAmplitudeMetres),
  };
}
