import type { BodySighting } from '#core/see/body-sighting';
import type { PoseNetworks } from '#core/see/find-swimmers';
import { layStretches } from '#core/see/lay-seen';
import { seenRuns } from '#core/see/seen-runs';
import { proposeEvents } from '#core/follow/propose-events';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { SeenRun } from '#core/swim-file/swim-schema';
import type { Truth } from '../../../sample-clips/truth-schema';
import { trueAt } from '../follow/follow-coach';
import { type ReadingErrors, readingErrors } from '../follow/follow-scores';
import { followedSwim } from '../follow/followed-swim';
import { type SeeClip, seeClips } from './see-clips';
import { openNetworksHere } from './see-networks';
import { type RawSeen, rawSeen } from './see-raw';
import { writeSection } from '../write-section';

/**
 * What is seen of clips on which nothing is marked, held against the drawn truth: found or not, how far every landmark is off (the bare
 * networks' points beside those laid), kick frequency and toe amplitude once every proposed kick is accepted, kicks found, pictures a
 * second. Settings were chosen on the first two clips; the others prove them. What the networks saw is kept in .cache/see; `again`
 * looks anew, a name alone takes only that clip. Run with tsx.
 */
const [only, again] = [process.argv[2], process.argv.includes('again')];

let opened: Promise<PoseNetworks> | null = null;
const networks = (): Promise<PoseNetworks> => {
  opened ??= openNetworksHere();
  return opened;
};

/** Nearer than this to a drawn kick, a proposed one means it, seconds. */
const meant = 0.05;

interface Row {
  readonly clip: SeeClip;
  readonly raw: RawSeen;
  readonly bare: ReadonlyMap<LandmarkName, number>;
  readonly laid: ReadonlyMap<LandmarkName, number>;
  /** Share of points within two of their own spreads along each axis. */
  readonly inside: number;
  readonly frequency: number | null;
  readonly amplitude: number | null;
  readonly kicks: { readonly there: number; readonly found: number; readonly wrong: number };
}

/** Root mean square distance from the truth of what is given of each frame, percent of the body length. */
function rms(
  truth: Truth,
  frames: readonly number[],
  of: (i: number, name: LandmarkName) => { readonly x: number; readonly y: number } | null,
): ReadonlyMap<LandmarkName, number> {
  const length = truth.bodyLengthMetres / truth.metresPerPixel;
  return new Map(
    landmarkNames.map((name) => {
      const squares = frames.flatMap((frame, i) => {
        const [at, is] = [trueAt(truth, frame, name), of(i, name)];
        return is ? [(is.x - at.x) ** 2 + (is.y - at.y) ** 2] : [];
      });
      const mean = squares.reduce((sum, each) => sum + each, 0) / Math.max(1, squares.length);
      return [name, (100 * Math.sqrt(mean)) / length];
    }),
  );
}

/** What the networks alone would lay: bases of finger and toe stand for their tips. */
function bareOf(body: BodySighting, name: LandmarkName): { readonly x: number; readonly y: number } {
  if (name === 'fingertip') return body.indexBase.at;
  return name === 'toe' ? body.toeBase.at : body.landmarks[name].at;
}

function kicksOf(
  clip: SeeClip,
  truth: Truth,
  seen: readonly SeenRun[],
  first: number,
  last: number,
): Row['kicks'] {
  const { swim, clock } = followedSwim(truth, clip.width, clip.height, clip.arms, [], []);
  const own = proposeEvents(
    { ...swim, seen: seen.map((run) => ({ ...run, points: [...run.points] })) },
    clock,
  );
  const kicks = truth.events.filter(({ kind }) => kind.startsWith('kick'));
  const [from, to] = [truth.realTimes[first] ?? 0, truth.realTimes[last] ?? 0];
  // a turn at the very edge of what is seen can't be seen as one
  const there = kicks.filter(({ time }) => time > from + 2 * meant && time < to - 2 * meant);
  const near = (a: { kind: string; time: number }, b: { kind: string; time: number }): boolean =>
    a.kind === b.kind && Math.abs(a.time - b.time) <= meant;
  return {
    there: there.length,
    found: there.filter((each) => own.some((one) => near(one, each))).length,
    wrong: own.filter((one) => !kicks.some((each) => near(one, each))).length,
  };
}

/** What would be read of the seen points were they surely followed between two marked frames: readings take no seen ones. */
function readOf(
  { truth, width, height, arms }: SeeClip,
  seen: readonly SeenRun[],
): Pick<ReadingErrors, 'frequency' | 'amplitude'> {
  const hip = seen.filter(({ landmark }) => landmark === 'hip');
  const [only] = hip;
  if (!only || hip.length > 1) return { frequency: null, amplitude: null };
  const ends = [0, only.points.length - 1].map((i) => ({
    frame: only.frame + i,
    hidden: [],
    points: Object.fromEntries(
      seen.map(({ landmark, points }) => [landmark, { x: points[i]?.[0] ?? 0, y: points[i]?.[1] ?? 0 }]),
    ),
  }));
  const sure = seen.map((run) => ({
    ...run,
    points: run.points.map(([x, y]): [number, number, number] => [x, y, 0.999]),
  }));
  return readingErrors(truth, width, height, arms, ends, sure);
}

async function rowOf(clip: SeeClip): Promise<Row> {
  const { truth } = clip;
  const raw = await rawSeen(clip, networks, again);
  const seen = raw.bodies.flatMap((body, frame) =>
    body ? [{ frame, time: truth.realTimes[frame] ?? 0, body }] : [],
  );
  const laid = layStretches(seen);
  const frames = seen.map(({ frame }) => frame);
  const runs = seenRuns(seen.flatMap(({ frame }, i) => (laid[i] ? [{ frame, points: laid[i] }] : [])));
  let [held, all] = [0, 0];
  frames.forEach((frame, i) => {
    for (const name of landmarkNames) {
      const [at, is] = [trueAt(truth, frame, name), laid[i]?.[name]];
      if (!is) continue;
      all += 2;
      held += Number(Math.abs(is.x - at.x) < 1.96 * is.sd) + Number(Math.abs(is.y - at.y) < 1.96 * is.sd);
    }
  });
  const { frequency, amplitude } = readOf(clip, runs);
  return {
    clip,
    raw,
    bare: rms(truth, frames, (i, name) => (seen[i] ? bareOf(seen[i].body, name) : null)),
    laid: rms(truth, frames, (i, name) => laid[i]?.[name] ?? null),
    inside: (100 * held) / Math.max(1, all),
    frequency,
    amplitude,
    kicks: kicksOf(clip, truth, runs, frames[0] ?? 0, frames.at(-1) ?? 0),
  };
}

const rows: Row[] = [];
for (const clip of await seeClips())
  if (!only || only === 'again' || only === clip.name) rows.push(await rowOf(clip));

const fixed = (value: number | null | undefined, digits: number): string =>
  value === null || value === undefined ? '–' : value.toFixed(digits);
const seenOn = ({ raw }: Row): string =>
  `${raw.bodies.filter((body) => body).length} of ${raw.bodies.length}`;
const swum = rows.filter(({ clip }) => !clip.empty);
const table = [
  `| clip | seen on | ${landmarkNames.join(' | ')} | inside 95 % | kick frequency off % | toe amplitude off % | kicks found | of nothing |`,
  `| --- | --- | ${landmarkNames.map(() => '---').join(' | ')} | --- | --- | --- | --- | --- |`,
  ...swum.map(
    (row) =>
      `| ${row.clip.name}${row.clip.setOn ? ' (set on)' : ''} | ${seenOn(row)} | ${landmarkNames
        .map((name) => `${fixed(row.laid.get(name), 1)} (${fixed(row.bare.get(name), 1)})`)
        .join(
          ' | ',
        )} | ${fixed(row.inside, 0)} % | ${fixed(row.frequency, 2)} | ${fixed(row.amplitude, 1)} | ${row.kicks.found} of ${row.kicks.there} | ${row.kicks.wrong} |`,
  ),
];
const perSecond = rows.map(({ raw }) => 1 / raw.secondsEach).sort((a, b) => a - b);
const empty = rows.filter(({ clip }) => clip.empty);
const lines = [
  '## Seeing the swimmer without a mark',
  '',
  'Root mean square distance from the drawn points in percent of the body length, as laid and (in brackets) as the networks give them; toe and fingertip in brackets are the bases of big toe and index finger. “Inside 95 %”: coordinates within 1.96 of their own stated spread. Kick frequency and toe amplitude are read once every proposed kick is accepted, a kick counts as found within 50 ms. Settings were chosen on the two clips marked so; the others only prove them. Drawn film proves nothing about people.',
  '',
  ...table,
  '',
  `Where nobody swims (${empty.map(({ clip }) => clip.name).join(', ')}): a body seen on ${empty.reduce((sum, { raw }) => sum + raw.bodies.filter((body) => body).length, 0)} of ${empty.reduce((sum, { raw }) => sum + raw.bodies.length, 0)} pictures. Looking took ${fixed(perSecond.at(-1), 0)} pictures a second on the quickest clip and ${fixed(perSecond[0], 0)} on the slowest, in Node without relaxed SIMD, on one of two cores with other programs at work.`,
];
console.log(lines.join('\n'));
if (!only || only === 'again') writeSection('see', 'see/see.ts', lines);
