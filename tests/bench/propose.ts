import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { EventKind } from '#core/marks/event-kind';
import type { FollowedRun, Posture } from '#core/swim-file/swim-schema';
import type { Vision } from '../../renderer/follow/vision';
import { type FollowClip, followClips, madeFollowClip } from './follow-clips';
import { drawnCoach, evenLines, followAsCoach, readFilm, wholeFrames } from './follow-coach';
import { type ProposalScore, proposalScores, type ReadingErrors, readingErrors } from './follow-scores';
import { writeSection } from './write-section';

/**
 * Proposes moments from followed points on the eighteen drawn clips and holds them against the drawn moments: found,
 * missed, of nothing, how far off, how honest the spread. What is followed is kept in .cache/follow beside the clip;
 * `again` as an argument follows anew (minutes each). Run with tsx.
 */
const again = process.argv.includes('again');
/** As in follow.ts: a careful coach, four clicks a landmark a stroke, three body lines a stroke to begin with. */
const coachPixels = 1.5;
const clicksAStroke = 4;
const linesAStroke = 3;

interface Kept {
  readonly postures: readonly Posture[];
  readonly followed: readonly FollowedRun[];
}

async function openVision(): Promise<Vision> {
  const loaded = createRequire(import.meta.url)('@techstark/opencv-js') as Vision & {
    Mat?: unknown;
    onRuntimeInitialized?: () => void;
  };
  if (!loaded.Mat) {
    await new Promise<void>((resolve) => {
      loaded.onRuntimeInitialized = () => resolve();
    });
  }
  return loaded;
}

async function followedClip(clip: FollowClip): Promise<Kept> {
  const file = new URL(`../../.cache/follow/${clip.name}/followed.json`, import.meta.url);
  if (!again && existsSync(file)) return JSON.parse(readFileSync(file, 'utf8')) as Kept;
  const made = await madeFollowClip(clip);
  const { truth } = made;
  const film = await readFilm(made.file, clip.scenario.camera.width, clip.scenario.camera.height);
  const { first, last } = wholeFrames(truth, film);
  const { period, kicks } = clip.scenario.technique;
  const stroke = clip.swim === 'butterfly' ? period : (2 * period) / kicks.length;
  const strokes = ((truth.realTimes[last] ?? 0) - (truth.realTimes[first] ?? 0)) / stroke;
  const coach = drawnCoach(truth, coachPixels, 7);
  const lines = evenLines(first, last, (last - first) / (linesAStroke * strokes));
  const cap = Math.round(clicksAStroke * strokes);
  const { postures, followed } = followAsCoach(await openVision(), film, truth, coach, lines, cap);
  const kept: Kept = { postures, followed };
  writeFileSync(file, JSON.stringify(kept));
  return kept;
}

interface Row {
  readonly clip: FollowClip;
  readonly scores: readonly ProposalScore[];
  readonly readings: ReadingErrors;
}
const rows: Row[] = [];
for (const clip of followClips()) {
  const { truth } = await madeFollowClip(clip);
  const { width, height } = clip.scenario.camera;
  const { postures, followed } = await followedClip(clip);
  const arms = clip.swim === 'butterfly' ? 'stroking' : 'stretched';
  rows.push({
    clip,
    scores: proposalScores(truth, width, height, arms, postures, followed),
    readings: readingErrors(truth, width, height, arms, postures, followed),
  });
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / Math.max(1, values.length));
const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);

function line(kind: EventKind, swim: FollowClip['swim'], coarse: boolean): readonly string[] {
  const own = rows
    .filter(({ clip }) => clip.swim === swim && (clip.hardship === 'twenty-five-a-second') === coarse)
    .flatMap(({ scores }) => scores.filter((each) => each.kind === kind));
  if (own.length === 0) return [];
  const total = (of: (score: ProposalScore) => number): number =>
    own.reduce((sum, each) => sum + of(each), 0);
  const errors = own.flatMap((each) => each.errors);
  const inSds = own.flatMap((each) => each.inSds);
  const stated = errors.map((error, i) => (inSds[i] ? error / inSds[i] : 0));
  const ms = (seconds: number): string => (1000 * seconds).toFixed(1);
  const there = total((each) => each.there);
  const found = total((each) => each.found);
  return [
    `| ${kind} | ${swim} | ${coarse ? 25 : 60} | ${found} of ${there} | ${there - found} | ${total((each) => each.wrong)} | ${ms(mean(errors))} | ${ms(rms(errors))} | ${ms(rms(stated))} | ${inSds.filter((z) => Math.abs(z) <= 1.96).length} of ${inSds.length} |`,
  ];
}

const kinds: readonly EventKind[] = ['kick-top', 'kick-bottom', 'entry', 'catch', 'shoulder', 'exit'];
const table = [false, true].flatMap((coarse) =>
  (['butterfly', 'kick'] as const).flatMap((swim) => kinds.flatMap((kind) => line(kind, swim, coarse))),
);
const off = (value: number | null): string => (value === null ? '–' : value.toFixed(2));
writeSection('proposals', 'propose.ts', [
  '## Proposed moments',
  '',
  'From the followed points of the eighteen drawn clips above, with nothing marked but what was asked; the surface line and the way of travel are set. A moment counts as found within 100 ms; later is positive. “Stated” is the root mean square of the standard deviations the proposals carry; the last column counts the moments inside ± 1.96 of it. Spreads and reaches were chosen on these same clips, so other film has to confirm them.',
  '',
  '| moment | swim | pictures a second | found | missed | of nothing | mean, ms | RMS, ms | stated, ms | inside 95 % |',
  '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
  ...table,
  '',
  'With every proposed kick accepted, and nothing else:',
  '',
  '| clip | kick frequency off % | toe amplitude off % |',
  '| --- | --- | --- |',
  ...rows.map(
    ({ clip, readings }) => `| ${clip.name} | ${off(readings.frequency)} | ${off(readings.amplitude)} |`,
  ),
]);
console.log(table.join('\n'));
