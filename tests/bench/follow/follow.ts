import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import { landmarkNames } from '#core/marks/landmark';
import type { FollowedRun } from '#core/swim-file/swim-schema';
import { hardships } from '../../../sample-clips/hard-variant';
import { type FollowClip, followClips, keptFile, madeFollowClip } from './follow-clips';
import {
  armsOf,
  coachLines,
  drawnCoach,
  evenLines,
  followAsCoach,
  followingRates,
  readFilm,
  wholeFrames,
} from './follow-coach';
import {
  type FollowedMarks,
  pooledScore,
  type ReadingErrors,
  readingErrors,
  type Score,
  scoreOf,
  splineRuns,
} from './follow-scores';
import { followedName } from './kept-followed';
import { openVision } from './open-vision';
import { writeSection } from '../write-section';

/**
 * Follows the points of drawn swims at 1080p as a coach would and holds them against the drawn truth; rivals on the same
 * clips. Run with tsx; names of clips as arguments limit it to those. What was measured is kept in .cache/follow, and the
 * table is written of all that is kept; `table` as the only argument measures nothing, `pace`, with names or without, only how many
 * pictures a second are followed from what the first coach had marked in the end. Clips are drawn once, minutes each.
 */
const wanted = process.argv.slice(2);
/** Give or take of a careful coach's mark, pixels an axis; our own figure. */
const coachPixels = 1.5;
/** Coaches who each mark every clip anew: one alone meets or misses a target by chance. */
const coachSeeds: readonly number[] = [201, 202];
const clicksAStroke = 4;

interface Row {
  readonly clip: FollowClip;
  readonly own: Score;
  /** Of each coach. */
  readonly readings: readonly ReadingErrors[];
  readonly clicksPer100: number;
  readonly picturesASecond: number;
  readonly spline: Score;
  readonly splineClicksPer100: number;
  readonly plain: Score;
  readonly outside: { readonly version: string; readonly score: Score } | null;
}

const vision = await openVision();

async function outsideTracks(
  file: string,
  lines: readonly { readonly frame: number; readonly points: readonly (readonly number[])[] }[],
): Promise<{ version: string; blended: readonly FollowedRun[]; forward: readonly FollowedRun[] } | null> {
  const script = fileURLToPath(new URL('follow_opencv.py', import.meta.url));
  try {
    const { stdout } = await execa('/usr/bin/python3', [script], {
      input: JSON.stringify({ file, lines }),
      maxBuffer: 1e9,
    });
    const told = JSON.parse(stdout) as {
      opencv: string;
      blended: Record<string, number[][]>;
      forward: Record<string, number[][]>;
    };
    const runs = (by: Record<string, number[][]>): FollowedRun[] => {
      const frames = Object.keys(by)
        .map(Number)
        .sort((a, b) => a - b);
      return landmarkNames.map((landmark, l) => ({
        landmark,
        frame: frames[0] ?? 0,
        points: frames.map((frame) => [by[frame]?.[l]?.[0] ?? 0, by[frame]?.[l]?.[1] ?? 0, 1]),
      }));
    };
    return { version: told.opencv, blended: runs(told.blended), forward: runs(told.forward) };
  } catch (problem) {
    console.warn(`no OpenCV for Python: ${String(problem).slice(0, 120)}`);
    return null;
  }
}

async function measure(clip: FollowClip): Promise<Row> {
  const { file, truth } = await madeFollowClip(clip);
  const { width, height } = clip.scenario.camera;
  const film = await readFilm(file, width, height);
  const { first, last } = wholeFrames(truth, film);
  const { period, kicks } = clip.scenario.technique;
  // a stroke of butterfly has two kicks; for kicks alone two of them count as one
  const stroke = clip.swim === 'butterfly' ? period : (2 * period) / kicks.length;
  const strokes = ((truth.realTimes[last] ?? 0) - (truth.realTimes[first] ?? 0)) / stroke;
  const cap = Math.round(clicksAStroke * strokes);
  const arms = armsOf(clip);
  const lines = coachLines(clip, truth);
  const films = coachSeeds.map((seed) =>
    followAsCoach(vision, film, truth, drawnCoach(truth, coachPixels, seed), lines, cap),
  );
  const clicks = films.reduce(
    (sum, { clicks }) => sum + [...clicks.values()].reduce((own, each) => own + each, 0),
    0,
  );
  const frames = last - first + 1;
  const spline = splineRuns(truth, drawnCoach(truth, coachPixels, 8), first, last);
  // the rivals may lay as many whole lines as the coach had clicks for
  const again = drawnCoach(truth, coachPixels, 9);
  const rivalLines = evenLines(first, last, (last - first) / Math.max(1, cap - 1)).map((frame) => ({
    frame,
    points: landmarkNames.map((name) => {
      const { x, y } = again.mark(frame, name);
      return [x, y];
    }),
  }));
  const marked = rivalLines.map(({ frame, points }) => ({
    frame,
    hidden: [],
    points: Object.fromEntries(
      landmarkNames.map((name, l) => [name, { x: points[l]?.[0] ?? 0, y: points[l]?.[1] ?? 0 }]),
    ),
  }));
  const outside = await outsideTracks(file, rivalLines);
  // `propose.ts` proposes from what the first coach had in the end
  writeFileSync(keptFile(clip.name, followedName), JSON.stringify(films[0]));
  return {
    clip,
    own: pooledScore(truth, films),
    readings: films.map(({ postures, followed }) =>
      readingErrors(truth, width, height, arms, postures, followed),
    ),
    clicksPer100: (100 * clicks) / frames / films.length,
    picturesASecond:
      (1000 * films.reduce((sum, { pictures }) => sum + pictures, 0)) /
      films.reduce((sum, { milliseconds }) => sum + milliseconds, 0),
    spline: scoreOf(truth, [], spline.runs),
    splineClicksPer100: (100 * spline.clicksEach * landmarkNames.length) / frames,
    plain: scoreOf(truth, marked, outside?.forward ?? []),
    outside: outside && { version: outside.version, score: scoreOf(truth, marked, outside.blended) },
  };
}

/** The worst of the coaches; null where one of them had no such reading. */
const worst = ({ readings }: Row, key: 'frequency' | 'amplitude'): number | null => {
  const errors = readings.map((each) => each[key]);
  return errors.reduce<number | null>(
    (most, each) => (most === null || each === null ? null : Math.max(most, each)),
    0,
  );
};
const told = (value: number | null, digits = 2): string => (value === null ? '–' : value.toFixed(digits));
const rows: Row[] = [];
const keep = (row: Row): void => writeFileSync(keptFile(row.clip.name, 'measured.json'), JSON.stringify(row));
/** What an earlier run measured of a clip; written by this very program. */
const keptRow = (name: string): Row | null => {
  const file = keptFile(name, 'measured.json');
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Row) : null;
};

/** Pictures a second followed in the app itself, as follow-rate.ts last measured them. */
const keptRate = (name: string): number | null => {
  const file = keptFile(name, 'rate.json');
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as { rate: number }).rate : null;
};

/** Writes what has been measured so far, so that a run cut short keeps what it has. */
function writeRows(): void {
  const limit = ({ hardship }: FollowClip): number => (hardship === 'clean' ? 0.6 : 1.2);
  const met = (yes: boolean): string => (yes ? 'met' : 'missed');
  // nothing was fitted to the held-out clip: it stands for itself
  const totals = rows.filter(({ clip }) => clip.hardship !== 'held-out');
  const share = (test: (row: Row) => boolean): string => `${totals.filter(test).length} of ${totals.length}`;
  const offTotal = totals.reduce((sum, { own }) => sum + (own.off * own.points) / 100, 0);
  const caughtTotal = totals.reduce(
    (sum, { own }) => sum + ((own.caught ?? 0) * own.off * own.points) / 1e4,
    0,
  );
  const speeds = rows.map((row) => row.picturesASecond).sort((a, b) => a - b);
  const slowest = speeds[0] ?? 0;
  const middle = speeds[speeds.length >> 1] ?? 0;
  const decoded = rows.flatMap(({ clip }) => keptRate(clip.name) ?? []).sort((a, b) => a - b);
  writeSection('follow', 'follow/follow.ts', [
    '## Following points',
    '',
    `Drawn swims at 1080p, 60 pictures a second (25 where named), against the drawn truth. Drawn coaches, ${coachSeeds.length} of them on every clip, mark within ${coachPixels} px, lay a body line on one kick top a stroke (marked within a frame or two) and where the film begins and ends, as the app asks, and answer what is asked until a landmark has had ${clicksAStroke} clicks a stroke (for kicks alone, two kicks count as a stroke). Errors are root mean squares over all nine landmarks and the coaches, their own marks left out, in pixels and in percent of the body length; nothing was fitted to the held-out clip (another swimmer, rhythm, course and water), though it was looked at when a few settings were chosen; it is left out of the totals below; "sure" are the points that were not flagged, "trunk, head, legs" leaves out elbow, wrist and fingertip; of frequency and amplitude the worst coach's error is given. Rivals: every fifth frame marked with a spline between; plain Lucas–Kanade forward from line to line, and forward and backward blended, both by OpenCV ${rows[0]?.outside?.version ?? '–'} for Python on the same pictures, with ${clicksAStroke} whole lines a stroke.`,
    '',
    '| clip | RMS px | RMS % | sure % | trunk, head, legs % | flagged % | off by > 2 %, % | of these flagged % | clicks per 100 frames | kick frequency off % | toe amplitude off % | spline % (clicks) | plain flow % | both ways % |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows.map(
      (row) =>
        `| ${row.clip.name} | ${told(row.own.rmsPixels, 1)} | ${told(row.own.rms)} | ${told(row.own.rmsSure)} | ${told(row.own.rmsTrunkAndLegs)} | ${told(row.own.flagged, 0)} | ${told(row.own.off, 1)} | ${told(row.own.caught, 0)} | ${told(row.clicksPer100, 0)} | ${told(worst(row, 'frequency'))} | ${told(worst(row, 'amplitude'))} | ${told(row.spline.rms)} (${told(row.splineClicksPer100, 0)}) | ${told(row.plain.rms)} | ${told(row.outside?.score.rms ?? null)} |`,
    ),
    '',
    '| target | result | |',
    '| --- | --- | --- |',
    `| RMS at most 0.6 % on clean clips, 1.2 % on hard ones | ${share((row) => row.own.rms <= limit(row.clip))} clips | ${met(totals.every((row) => row.own.rms <= limit(row.clip)))} |`,
    `| the same of the points that are not flagged | ${share((row) => row.own.rmsSure <= limit(row.clip))} clips | |`,
    `| kick frequency within 1 % | ${share((row) => (worst(row, 'frequency') ?? 99) <= 1)} clips | ${met(totals.every((row) => (worst(row, 'frequency') ?? 99) <= 1))} |`,
    `| toe amplitude within 3 % | ${share((row) => (worst(row, 'amplitude') ?? 99) <= 3)} clips | ${met(totals.every((row) => (worst(row, 'amplitude') ?? 99) <= 3))} |`,
    `| of points off by more than 2 %, 95 % flagged | ${told((100 * caughtTotal) / Math.max(1, offTotal), 1)} % over all clips | ${met(caughtTotal >= 0.95 * offTotal)} |`,
    `| 60 pictures a second apart from decoding | median ${told(middle, 0)}, slowest ${told(slowest, 0)} (${cpus().length} cores, load ${told(loadavg()[0] ?? 0, 0)} from other programs) | ${met(slowest >= 60)} |`,
    decoded.length === 0
      ? '| 40 pictures a second with decoding, in the app | not measured | |'
      : `| 40 pictures a second with decoding, in the app (\`follow-rate.ts\`) | median ${told(decoded[decoded.length >> 1] ?? 0, 0)}, slowest ${told(decoded[0] ?? 0, 0)}, ${decoded.length} clips | ${met((decoded[0] ?? 0) >= 40)} |`,
  ]);
}

// by hardship, so that a run cut short has both swims of what it has
const order = (clip: FollowClip): number =>
  clip.hardship === 'clean'
    ? -1
    : clip.hardship === 'held-out'
      ? hardships.length
      : hardships.indexOf(clip.hardship);
if (wanted[0] === 'pace')
  for (const clip of followClips()) {
    const row = keptRow(clip.name);
    if (!row || (wanted.length > 1 && !wanted.includes(clip.name))) continue;
    const { file, truth } = await madeFollowClip(clip);
    const film = await readFilm(file, clip.scenario.camera.width, clip.scenario.camera.height);
    const { postures } = JSON.parse(readFileSync(keptFile(clip.name, followedName), 'utf8')) as FollowedMarks;
    const rates = [...followingRates(vision, film, truth, postures, 5)].sort((a, b) => a - b);
    keep({ ...row, picturesASecond: rates[2] ?? 0 });
    console.log(clip.name, rates.map((each) => each.toFixed(0)).join(' '), 'pictures a second');
  }
for (const clip of [...followClips()].sort((a, b) => order(a) - order(b))) {
  if (wanted.length > 0 && !wanted.includes(clip.name)) continue;
  const row = await measure(clip);
  rows.push(row);
  keep(row);
  console.log(
    clip.name,
    `rms ${told(row.own.rms)} % sure ${told(row.own.rmsSure)} % rest ${told(row.own.rmsTrunkAndLegs)} %`,
    `flagged ${told(row.own.flagged, 0)} % off ${told(row.own.off, 1)} % caught ${told(row.own.caught, 0)} %`,
    `f ${told(worst(row, 'frequency'))} % A ${told(worst(row, 'amplitude'))} %`,
    `spline ${told(row.spline.rms)} plain ${told(row.plain.rms)} outside ${told(row.outside?.score.rms ?? null)}`,
    `${told(row.picturesASecond, 0)}/s clicks ${told(row.clicksPer100, 0)} against ${told(row.splineClicksPer100, 0)}`,
  );
}
const measured = [...followClips()]
  .sort((a, b) => order(a) - order(b))
  .flatMap((clip) => keptRow(clip.name) ?? []);
rows.splice(0, rows.length, ...measured);
if (rows.length > 0) writeRows();
