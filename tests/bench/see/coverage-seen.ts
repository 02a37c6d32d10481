import { everyReading, readingContext } from '#core/measures/compute-readings';
import type { ComputedReading } from '#core/measures/reading';
import { layStretches } from '#core/see/lay-seen';
import { seenRuns } from '#core/see/seen-runs';
import { landmarkNames } from '#core/marks/landmark';
import type { Swim } from '#core/swim-file/swim-schema';
import { frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import { trueAt } from '../follow/follow-coach';
import { followedSwim, kickMark } from '../follow/followed-swim';
import { proofSwim } from './proof-swims';
import { openNetworksHere } from './see-networks';
import { rawSeen } from './see-raw';
import type { SeeClip } from './see-clips';
import type { PoseNetworks } from '#core/see/find-swimmers';

/**
 * How often the interval of a reading from seen points alone holds what the drawn points read, on drawn swims nothing was set on:
 * other bodies, looks, techniques and cameras, each from its seed. All moments are the drawn ones, so that only the points err.
 * The readings to be let through are chosen on the seeds up to `chosenTo`; the others prove them. Run with tsx; seeds as
 * arguments limit it to those. Drawing and looking take a minute a swim, once.
 */
const seeds = process.argv.slice(2).map(Number).filter(Number.isFinite);
const all = seeds.length > 0 ? seeds : Array.from({ length: 12 }, (_, i) => 901 + i);
const chosenTo = 906;
const nobody = { swimmer: null, markingError: null };
let opened: Promise<PoseNetworks> | null = null;
const networks = (): Promise<PoseNetworks> => {
  opened ??= openNetworksHere();
  return opened;
};

interface Held {
  readonly inside: boolean;
  /** Off by so many halves of its own interval. */
  readonly halves: number;
}

const computed = (swim: Swim): ReadonlyMap<string, ComputedReading> =>
  new Map(
    everyReading(readingContext(swim, nobody)).flatMap((each) =>
      each.status === 'computed' ? [[each.id, each] as const] : [],
    ),
  );

async function heldOf(clip: SeeClip): Promise<ReadonlyMap<string, Held>> {
  const { truth, width, height, arms } = clip;
  const { bodies } = await rawSeen(clip, networks, false);
  const looks = bodies.flatMap((body, frame) =>
    body ? [{ frame, time: truth.realTimes[frame] ?? 0, body }] : [],
  );
  const laid = layStretches(looks);
  const runs = seenRuns(looks.flatMap(({ frame }, i) => (laid[i] ? [{ frame, points: laid[i] }] : [])));
  const { swim, clock } = followedSwim(truth, width, height, arms, [], []);
  const [first, last] = [looks[0]?.frame ?? 0, looks.at(-1)?.frame ?? 0];
  const rate = 1 / (realTimeOf(clock, first + 1) - realTimeOf(clock, first));
  const events = truth.events.flatMap(({ kind, time }, i) => {
    const frame = frameAtRealTime(clock, time);
    const part = (time - realTimeOf(clock, frame)) * rate;
    return frame > first && frame < last ? [kickMark(`t${i}`, kind, frame, part, 0.001)] : [];
  });
  const seen = computed({ ...swim, events, seen: runs.map((run) => ({ ...run, points: [...run.points] })) });
  const frames = looks.map(({ frame }) => frame);
  const drawn = computed({
    ...swim,
    events,
    postures: frames.map((frame) => ({
      frame,
      hidden: [],
      points: Object.fromEntries(landmarkNames.map((name) => [name, trueAt(truth, frame, name)])),
    })),
  });
  return new Map(
    [...seen].flatMap(([id, reading]): [string, Held][] => {
      const should = drawn.get(id);
      if (!should || reading.followed === 0 || should.unit !== reading.unit) return [];
      const { low, high } = reading.interval;
      const half = Math.max(1e-9, (high - low) / 2);
      const inside = should.value >= low && should.value <= high;
      return [[id, { inside, halves: Math.abs(reading.value - should.value) / half }]];
    }),
  );
}

const tally = new Map<string, { set: Held[]; proof: Held[] }>();
for (const seed of all)
  for (const [id, held] of await heldOf(await proofSwim(seed))) {
    const own = tally.get(id) ?? { set: [], proof: [] };
    tally.set(id, own);
    own[seed <= chosenTo ? 'set' : 'proof'].push(held);
  }
const share = (held: readonly Held[]): string =>
  held.length === 0
    ? '–'
    : `${held.filter(({ inside }) => inside).length}/${held.length} (worst ${Math.max(...held.map(({ halves }) => halves)).toFixed(1)})`;
console.log('| reading | held, swims chosen on | held, swims that prove |\n| --- | --- | --- |');
for (const [id, { set, proof }] of [...tally].sort(([a], [b]) => (a < b ? -1 : 1)))
  console.log(`| ${id} | ${share(set)} | ${share(proof)} |`);
