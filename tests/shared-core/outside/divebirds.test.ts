import { group } from 'd3-array';
import { describe, expect, it } from 'vitest';
import { emptyScene } from '#core/swim-file/swim-schema';
import { strouhalNumber } from '#core/measures/products/propulsion';
import { poolTransform, toPool } from '#core/scene/pool-transform';
import { zeroLagLowPass } from '#core/signal/butterworth';
import { fitLine } from '#core/signal/fit-line';
import { findPeaks } from '#core/signal/peaks';
import { resampleUniform } from '#core/signal/resample-uniform';
import { repeatability } from '#core/uncertainty/remarking';
import { readTable } from './read-table';

/** Rate the film was taken at, as published. */
const rate = 119.88;

type Row = Readonly<Record<string, string>>;

interface Run {
  readonly name: string;
  readonly rows: readonly Row[];
  /** Two points on the water's surface. */
  readonly water: Row | undefined;
}
interface Stroke {
  readonly run: string;
  readonly start: number;
  readonly stop: number;
  readonly frequency: number;
  readonly amplitude: number;
  readonly velocity: number;
}
interface Averages {
  readonly frequency: number;
  readonly amplitude: number;
  readonly speed: number;
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
};
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

function loadRuns(): Run[] {
  const water = new Map(readTable('divebird-water').map((row) => [row['run'], row]));
  return [...group(readTable('divebird-points'), (row) => row['run'] ?? '')].map(([name, rows]) => ({
    name,
    rows,
    water: water.get(name),
  }));
}

const loadStrokes = (): Stroke[] =>
  readTable('divebird-strokes').map((row) => ({
    run: row['run'] ?? '',
    start: Number(row['start_s']),
    stop: Number(row['stop_s']),
    frequency: Number(row['frequency_hz']),
    amplitude: Number(row['amplitude_lengths']),
    velocity: Number(row['speed_lengths_per_s']),
  }));

/** A point of a row as a picture point: the tables have y up. None where it was not digitised. */
function pointIn(row: Row | undefined, name: string): { x: number; y: number } | null {
  const x = Number.parseFloat(row?.[`${name}_x`] ?? '');
  const y = Number.parseFloat(row?.[`${name}_y`] ?? '');
  return Number.isFinite(x) && Number.isFinite(y) ? { x, y: -y } : null;
}

/** One digitised point over the run. Rows without it are left out. */
const track = (run: Run, name: string): { time: number; x: number; y: number }[] =>
  run.rows.flatMap((row) => {
    const point = pointIn(row, name);
    return point ? [{ time: Number(row['frame']) / rate, ...point }] : [];
  });

/**
 * The whole way from digitised points to f, A and U, with nothing but the core's own functions. A stroke goes from one turn of the
 * wing to the next like it, and its amplitude is that of our own kick: how far the wrist's turn between them lies off the
 * straight line between the two, against the body, so that drift does not count. Where strokes start and stop is the authors'.
 */
function measured(run: Run, strokes: readonly Stroke[]): Averages {
  const from = Math.min(...strokes.map((each) => each.start));
  const to = Math.max(...strokes.map((each) => each.stop));
  const eyes = track(run, 'eye');
  const tails = track(run, 'tail');
  const wrists = track(run, 'wrist');
  const [left, right] = [pointIn(run.water, 'left'), pointIn(run.water, 'right')];
  const at = new Map(tails.map((p) => [p.time, p]));
  const bodyLength = median(
    eyes.flatMap((e) => {
      const t = at.get(e.time);
      return t ? [Math.hypot(e.x - t.x, e.y - t.y)] : [];
    }),
  );
  const travel = (eyes.at(-1)?.x ?? 0) > (eyes[0]?.x ?? 0) ? 'right' : 'left';
  const transform = poolTransform(
    { ...emptyScene, travel, level: left && right ? { a: left, b: right } : null },
    bodyLength,
  );
  const even = (points: readonly { time: number; x: number; y: number }[], axis: 'x' | 'y') => {
    const uniform = resampleUniform(
      points.map((p) => p.time),
      points.map((p) => toPool(transform, p)[axis]),
      rate,
    );
    return { ...uniform, samples: zeroLagLowPass(uniform.samples, 8, rate) };
  };
  const [wrist, eye, tail, way] = [even(wrists, 'y'), even(eyes, 'y'), even(tails, 'y'), even(tails, 'x')];
  const start = Math.max(wrist.startTime, eye.startTime, tail.startTime);
  const end = Math.min(...[wrist, eye, tail].map((s) => s.startTime + (s.samples.length - 1) / rate));
  const value = (s: typeof wrist, t: number): number =>
    s.samples[Math.round((t - s.startTime) * rate)] ?? Number.NaN;
  const count = Math.floor((end - start) * rate) + 1;
  const times = Array.from({ length: count }, (_, i) => start + i / rate);
  const height = times.map((t) => value(wrist, t) - (value(eye, t) + value(tail, t)) / 2);
  const spread = Math.max(...height) - Math.min(...height);
  const options = { minProminence: 0.25 * spread, minGap: Math.round(0.15 * rate) };
  const tops = findPeaks(height, options);
  const bottoms = findPeaks(
    height.map((y) => -y),
    options,
  );
  const slack = 0.1;
  const inside = (i: number): boolean => {
    const t = times[i] ?? 0;
    return t >= from - slack && t <= to + slack;
  };
  const periods: number[] = [];
  for (const row of [tops, bottoms]) {
    row.slice(1).forEach((peak, i) => {
      const before = row[i];
      if (before && inside(before.index) && inside(peak.index))
        periods.push((peak.index - before.index) / rate);
    });
  }
  const heights = strokes.map(({ start, stop }) => {
    const at = (time: number): number => {
      const place = Math.min(Math.max(0, (time - (times[0] ?? 0)) * rate), height.length - 1);
      const before = Math.floor(place);
      const share = place - before;
      return (
        (1 - share) * (height[before] ?? 0) + share * (height[Math.min(before + 1, height.length - 1)] ?? 0)
      );
    };
    const [begin, end] = [at(start), at(stop)];
    const off = height.flatMap((y, i) => {
      const t = times[i] ?? 0;
      if (t < start || t > stop) return [];
      return [Math.abs(y - begin - ((end - begin) * (t - start)) / (stop - start))];
    });
    return Math.max(...off);
  });
  const stretch = times.filter((t) => t >= from && t <= to);
  const line = fitLine(
    stretch,
    stretch.map((t) => value(way, t)),
  );
  return { frequency: 1 / mean(periods), amplitude: mean(heights), speed: line?.slope ?? Number.NaN };
}

/** Digitised points of diving seabirds and the strokes their authors read (Lapsansky, Zatz, Tobalske 2020, eLife 9:e55774). */
describe('published strokes of diving seabirds', () => {
  it('come out of the raw points: tilt, filter, peaks, frequency, amplitude, speed, Strouhal', () => {
    const strokes = loadStrokes();
    const errors: Record<'frequency' | 'amplitude' | 'speed' | 'strouhal', number[]> = {
      frequency: [],
      amplitude: [],
      speed: [],
      strouhal: [],
    };
    for (const run of loadRuns()) {
      const own = strokes.filter((each) => each.run === run.name);
      if (own.length === 0) continue;
      const ours = measured(run, own);
      const theirs = {
        frequency: mean(own.map((s) => s.frequency)),
        amplitude: mean(own.map((s) => s.amplitude)),
        speed: mean(own.map((s) => s.velocity)),
      };
      for (const key of ['frequency', 'amplitude', 'speed'] as const) {
        errors[key].push(Math.abs(ours[key] / theirs[key] - 1));
      }
      const st = (a: Averages): number => strouhalNumber(a.frequency, a.amplitude, a.speed);
      errors.strouhal.push(Math.abs(st(ours) / st(theirs) - 1));
    }
    expect(errors.frequency.length).toBeGreaterThanOrEqual(12);
    const percent = (list: readonly number[]): number => 100 * median(list);
    const found = {
      frequency: percent(errors.frequency),
      amplitude: percent(errors.amplitude),
      speed: percent(errors.speed),
      strouhal: percent(errors.strouhal),
    };
    console.info('median errors against the published strokes, %:', found);
    expect(found.frequency).toBeLessThanOrEqual(3);
    expect(found.amplitude).toBeLessThanOrEqual(6);
    expect(found.speed).toBeLessThanOrEqual(5);
    expect(found.strouhal).toBeLessThanOrEqual(8);
  });

  it('were digitised three times at the eye: the typical error is that of three marks of one point', () => {
    const errors = loadRuns().map((run) => {
      const marks = [1, 2, 3].map((k) => run.rows.map((row) => Number.parseFloat(row[`eye_x_${k}`] ?? '')));
      const [a = [], b = [], c = []] = marks;
      const whole = a.flatMap((x, i) => {
        const three = [x, b[i] ?? Number.NaN, c[i] ?? Number.NaN];
        return three.every(Number.isFinite) ? [three] : [];
      });
      const pairs = (i: number, j: number) =>
        repeatability(whole.map((three) => ({ first: three[i] ?? 0, second: three[j] ?? 0 })));
      const three = [pairs(0, 1), pairs(0, 2), pairs(1, 2)].map((r) => r?.typicalError ?? Number.NaN);
      // the same, from the variance within each three, by another road: residuals after the means of each set
      const setMeans = [0, 1, 2].map((k) => mean(whole.map((t) => t[k] ?? 0)));
      const within = whole.map((t) => {
        const residuals = t.map((v, k) => v - (setMeans[k] ?? 0));
        const middle = mean(residuals);
        return residuals.reduce((sum, v) => sum + (v - middle) ** 2, 0);
      });
      const pooled = Math.sqrt(within.reduce((sum, v) => sum + v, 0) / (2 * (whole.length - 1)));
      return { pairwise: Math.sqrt(mean(three.map((v) => v * v))), pooled };
    });
    expect(errors).toHaveLength(13);
    for (const { pairwise, pooled } of errors) {
      expect(pairwise).toBeCloseTo(pooled, 9);
      // a point clicked by hand on 1920 × 1080: neither perfect nor wild
      expect(pairwise).toBeGreaterThan(0.1);
      expect(pairwise).toBeLessThan(10);
    }
  });
});
