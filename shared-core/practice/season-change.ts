import { group } from 'd3-array';
import { readingDifference } from '../compare/difference';
import { doubtOfBoth, isDoubtful } from '../measures/doubtful';
import type { ComputedReading, ReadingUnit } from '../measures/reading';
import { neverCompared } from '../measures/never-compared';
import type { SeasonSwim } from './season-swim';
import { likeKey, type Work } from './work';
import { practiceWords } from '../words/practice';

interface SeasonPoint {
  readonly swimId: string;
  readonly day: string;
  readonly effort: SeasonSwim['effort'];
  readonly reading: ComputedReading;
}

/** Swims that may stand on one line of a season: one swimmer, one work, aids and all, one unit; by day. */
export interface SeasonLine {
  readonly swimmerId: string | null;
  readonly work: Work;
  readonly unit: ReadingUnit;
  readonly points: readonly SeasonPoint[];
}

/** Change from the first to the latest swim of a line. */
export type SeasonChange =
  | {
      readonly status: 'compared';
      readonly since: string;
      readonly until: string;
      readonly value: number;
      readonly low: number;
      readonly high: number;
      /** 'clear': zero lies outside the interval. */
      readonly verdict: 'clear' | 'within-error';
      /** Whether strokes or kicks varying within the swims widened the interval, or it rests on marking alone. */
      readonly rests: 'marking-and-cycles' | 'marking-alone';
      /** The two were swum at different efforts, or one of them at an effort not said: that may be the change. */
      readonly effortDiffers: boolean;
      /** Whether either value is doubtful. */
      readonly doubtful: boolean;
    }
  | { readonly status: 'one-day-only'; readonly day: string };

/** The lines of one reading, in the order first swum. Empty for a reading that is never compared. */
export function seasonLines(swims: readonly SeasonSwim[], readingId: string): readonly SeasonLine[] {
  if (neverCompared(readingId)) return [];
  const points = swims
    .flatMap((swim) => {
      const reading = swim.readings.get(readingId);
      return reading ? [{ swim, reading }] : [];
    })
    .sort((a, b) => (a.swim.day < b.swim.day ? -1 : a.swim.day > b.swim.day ? 1 : 0));
  const alike = group(points, ({ swim, reading }) =>
    JSON.stringify([swim.swimmerId, likeKey(swim.work), reading.unit]),
  );
  return [...alike.values()].flatMap((line) => {
    const first = line[0];
    if (!first) return [];
    return [
      {
        swimmerId: first.swim.swimmerId,
        work: first.swim.work,
        unit: first.reading.unit,
        points: line.map(({ swim, reading }) => ({
          swimId: swim.swimId,
          day: swim.day,
          effort: swim.effort,
          reading,
        })),
      },
    ];
  });
}

/**
 * "Clear change since": latest against first, with a 95 % interval that is the wider of two: marking and both scales
 * (other days are other set-ups), and the spread from cycle to cycle of both swims. A change the swimmer's own strokes
 * vary by is none. It says that the two swims differ, not why. Null of an empty line.
 */
export function seasonChange(line: SeasonLine): SeasonChange | null {
  const first = line.points[0];
  const latest = line.points.at(-1);
  if (!first || !latest) return null;
  if (first.day === latest.day) return { status: 'one-day-only', day: first.day };
  return changeBetween(first, latest);
}

/**
 * The last clear change: the latest swim against the most recent earlier one from which, and from all before it, it clearly
 * differs. Without one the change since the first swim, as `seasonChange` has it. Swims are compared in a fixed order, the first one
 * first, and the first that is not clear ends it: so all comparisons together call a change where there is none no more often than
 * the first alone would (fixed-sequence testing; from memory).
 */
export function lastClearChange(line: SeasonLine): SeasonChange | null {
  let last = seasonChange(line);
  const latest = line.points.at(-1);
  if (last?.status !== 'compared' || last.verdict !== 'clear' || !latest) return last;
  for (const point of line.points.slice(1)) {
    if (point.day === latest.day) break;
    const change = changeBetween(point, latest);
    if (change?.status !== 'compared' || change.verdict !== 'clear') break;
    last = change;
  }
  return last;
}

function changeBetween(first: SeasonPoint, latest: SeasonPoint): SeasonChange | null {
  const marked = readingDifference(first.reading, latest.reading, false);
  if (!marked) return null;
  const marking = marked.high - marked.value;
  const halves = [cycleHalf(first.reading), cycleHalf(latest.reading)];
  const known = halves.filter((half) => half !== null);
  const half = Math.max(marking, Math.hypot(...known));
  return {
    status: 'compared',
    since: first.day,
    until: latest.day,
    value: marked.value,
    low: marked.value - half,
    high: marked.value + half,
    verdict: Math.abs(marked.value) > half ? 'clear' : 'within-error',
    rests: known.length === halves.length ? 'marking-and-cycles' : 'marking-alone',
    effortDiffers: first.effort !== latest.effort,
    doubtful: isDoubtful(doubtOfBoth(first.reading, latest.reading)),
  };
}

function cycleHalf({ interval, otherInterval }: ComputedReading): number | null {
  const found = [interval, otherInterval].find((each) => each?.question === 'this-swimmer');
  return found ? (found.high - found.low) / 2 : null;
}

/** A change in words: what moved, by how much, since when. `unit` and digits are the caller's. */
export function seasonChangeWords(change: SeasonChange, figures: (value: number) => string): string {
  if (change.status === 'one-day-only') return practiceWords('filmedOneDay', { day: change.day });
  const half = figures(change.high - change.value);
  const size = `${change.value > 0 ? '+' : ''}${figures(change.value)} ± ${half}`;
  const verdict = change.verdict === 'clear' ? practiceWords('clearChange') : practiceWords('noClearChange');
  const caveat = change.effortDiffers ? practiceWords('effortNotSame') : '';
  const doubtful = change.doubtful ? ', doubtful' : '';
  return practiceWords('since', { verdict, since: change.since, size, doubtful, caveat });
}
