import { type EventKind, eventKinds } from '#core/marks/event-kind';
import { landmarkNames } from '#core/marks/landmark';
import type { BodyContext } from '#core/measures/body/context/body-context';
import { readingContext } from '#core/measures/compute-readings';
import { type EventMark, plainMark, type Swim } from '#core/swim-file/swim-schema';
import { recordFromTable } from '#core/timeline/frame-times-record';
import type { MarkingError } from '#core/uncertainty/marking-error';
import { aSwim } from '#tests/renderer/a-swim';
import { normal, seeded } from '../../../sample-clips/model/seeded';

export interface TrueInstant {
  readonly kind: EventKind;
  readonly time: number;
  readonly metres?: number;
}

export interface Film {
  /** Pictures a real second. */
  readonly rate: number;
  readonly slowdown: number;
  /** Spread of the gaps between pictures, as a share of the gap; 0 for an even rate. */
  readonly uneven: number;
  /** Standard deviation of one mark beside rounding, real seconds. */
  readonly eventSd: number;
}

export function markingErrorOf(eventSd: number): MarkingError {
  return {
    basis: 'measured',
    measured: { events: [...eventKinds], landmarks: [...landmarkNames], followed: [...landmarkNames] },
    eventSd: Object.fromEntries(eventKinds.map((kind) => [kind, eventSd])) as Record<EventKind, number>,
    landmarkSd: Object.fromEntries(landmarkNames.map((name) => [name, 2])) as MarkingError['landmarkSd'],
    followedSd: Object.fromEntries(landmarkNames.map((name) => [name, 4])) as MarkingError['followedSd'],
    scenePointSd: 2,
  };
}

/**
 * Marks a swim as a coach would: each instant, mistaken by a normal error, on the picture that starts nearest to it.
 * A picture shows the moment its exposure starts, so nearest-start rounding has no lean to either side.
 */
export function markInstants(
  instants: readonly TrueInstant[],
  film: Film,
  random: () => number,
  change: Partial<Swim> = {},
): Swim {
  const ticksPerSecond = 90_000;
  const end = Math.max(...instants.map((each) => each.time)) + 1;
  const starts: number[] = [];
  for (let time = 0; time < end; ) {
    starts.push(Math.round(time * film.slowdown * ticksPerSecond));
    time += (1 + film.uneven * (random() - 0.5)) / film.rate;
  }
  const last = starts.at(-1) ?? 0;
  const table = { ticksPerSecond, starts, endTick: last + 1000 };
  const realOf = (frame: number): number => (starts[frame] ?? last) / ticksPerSecond / film.slowdown;
  const nearest = (time: number): number => {
    let best = 0;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (realOf(middle) <= time) low = middle;
      else high = middle - 1;
    }
    best = low;
    return best + 1 < starts.length && realOf(best + 1) - time < time - realOf(best) ? best + 1 : best;
  };
  const events = instants.map(
    (each, i): EventMark => ({
      id: `e${i}`,
      kind: each.kind,
      frame: nearest(each.time + film.eventSd * normal(random)),
      ...plainMark,
      breathTo: each.kind === 'breath' ? 'front' : null,
      metres: each.metres ?? null,
    }),
  );
  const base = aSwim();
  return {
    ...base,
    clip: {
      ...base.clip,
      frameTimes: recordFromTable(table),
      slowdown: { factor: film.slowdown, source: 'coach' },
    },
    events,
    ...change,
  };
}

export function contextOf(swim: Swim, eventSd: number): BodyContext {
  return readingContext(swim, { swimmer: null, markingError: markingErrorOf(eventSd) });
}

export interface DrawnSwim {
  readonly swim: Swim;
  readonly eventSd: number;
  readonly film: Film;
  /** What really happened, and when. */
  readonly instants: readonly TrueInstant[];
  readonly truth: ReadonlyMap<string, number>;
}

/** A swim of random technique, film and marking, with the truth of each reading by plain arithmetic on the instants. */
export function drawSwim(seed: number): DrawnSwim {
  const random = seeded(seed);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const film: Film = {
    rate: between(25, 240),
    slowdown: random() < 0.3 ? 4 : 1,
    uneven: random() < 0.5 ? 0 : 0.4,
    eventSd: between(0.002, 0.015),
  };
  const { instants, truth, stroke } =
    random() < 0.35 ? drawKicking(random, between) : drawButterfly(random, between);
  const base = aSwim();
  const card = {
    ...base.card,
    stroke,
    arms: stroke === 'butterfly' ? ('stroking' as const) : ('stretched' as const),
  };
  const swim = markInstants(instants, film, random, { card });
  return { swim, eventSd: film.eventSd, film, instants, truth };
}

interface Drawn {
  readonly instants: readonly TrueInstant[];
  readonly truth: ReadonlyMap<string, number>;
  readonly stroke: 'butterfly' | 'dolphin-kick';
}

type Between = (low: number, high: number) => number;

function drawKicking(random: () => number, between: Between): Drawn {
  const period = 1 / between(0.8, 3);
  const kicks = 3 + Math.floor(random() * 11);
  const down = period * between(0.4, 0.6);
  const start = between(0.3, 0.8);
  const missed = random() < 0.3 && kicks >= 5 ? 1 + Math.floor(random() * (kicks - 2)) : -1;
  const instants: TrueInstant[] = [];
  for (let i = 0; i < kicks; i++) {
    if (i === missed) continue;
    instants.push({ kind: 'kick-top', time: start + i * period });
    instants.push({ kind: 'kick-bottom', time: start + i * period + down });
  }
  const truth = new Map([
    ['kick-frequency', 1 / period],
    ['kick-tempo', period],
    ['kick-rate-per-minute', 60 / period],
    ['down-kick-time', down],
    ['up-kick-time', period - down],
    ['down-up-ratio', down / (period - down)],
  ]);
  if (random() < 0.5) {
    const speed = between(0.6, 2);
    // floats hang a centimetre off their place, as the readings take them to
    const off = (): number => 0.01 * normal(random);
    instants.push({ kind: 'distance-mark', time: start + 0.1 + off() / speed, metres: 5 });
    instants.push({ kind: 'distance-mark', time: start + 0.1 + (5 + off()) / speed, metres: 10 });
    truth.set('speed-marks', speed);
    truth.set('distance-per-kick', speed * period);
  }
  return { instants, truth, stroke: 'dolphin-kick' };
}

function drawButterfly(random: () => number, between: Between): Drawn {
  const period = between(0.95, 1.6);
  const strokes = 2 + Math.floor(random() * 11);
  const start = between(0.5, 0.9);
  const jitter = random() < 0.5 ? 0.015 : 0;
  const shift = { t1: between(-0.08, 0.08), t3: between(-0.08, 0.08), t4: between(-0.06, 0.06) };
  const hand = { catch: between(0.22, 0.34), shoulder: between(0.44, 0.52), exit: between(0.66, 0.74) };
  const kick = {
    t1: shift.t1,
    b1: shift.t1 + between(0.18, 0.24),
    t2: hand.shoulder + shift.t3,
    b2: hand.exit + shift.t4,
  };
  const instants: TrueInstant[] = [];
  const rows: { entry: number; catch: number; shoulder: number; exit: number }[] = [];
  const breathes = (i: number): boolean => i % 2 === 0;
  for (let i = 0; i <= strokes; i++) {
    const entry = start + i * period;
    instants.push({ kind: 'entry', time: entry });
    if (i === strokes) break;
    const row = {
      entry,
      catch: entry + hand.catch * period + jitter * (random() - 0.5),
      shoulder: entry + hand.shoulder * period + jitter * (random() - 0.5),
      exit: entry + hand.exit * period + jitter * (random() - 0.5),
    };
    rows.push(row);
    for (const kind of ['catch', 'shoulder', 'exit'] as const) instants.push({ kind, time: row[kind] });
    instants.push({ kind: 'kick-top', time: entry + kick.t1 * period });
    instants.push({ kind: 'kick-bottom', time: entry + kick.b1 * period });
    instants.push({ kind: 'kick-top', time: entry + kick.t2 * period });
    instants.push({ kind: 'kick-bottom', time: entry + kick.b2 * period });
    if (breathes(i)) instants.push({ kind: 'breath', time: entry + 0.6 * period });
  }
  const speed = between(1, 2);
  const from = start + between(0, 0.5);
  const off = (): number => 0.01 * normal(random);
  instants.push({ kind: 'distance-mark', time: from + off() / speed, metres: 15 });
  instants.push({ kind: 'distance-mark', time: from + (7 + off()) / speed, metres: 22 });
  const underwater = between(0.4, start - 0.05);
  instants.push({ kind: 'push-off', time: start - 0.05 - underwater + 0.02 });
  instants.push({ kind: 'breakout', time: start - 0.03 });
  instants.push({ kind: 'touch', time: start + (strokes + 0.4) * period });
  const truth = new Map<string, number>([
    ['stroke-count', strokes + 1],
    ['breathing-every', strokes / Math.ceil(strokes / 2)],
    ['speed-marks', speed],
    ['stroke-length', speed * period],
    ['stroke-index', speed * speed * period],
    ['distance-per-kick', (speed * period) / 2],
    ['underwater-time', underwater],
    ['kick-frequency', 2 / period],
    ['kick-tempo', period / 2],
    ['kick-rate-per-minute', 120 / period],
    ['stroke-rate', 60 / period],
  ]);
  const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const gapsOf = (row: (typeof rows)[number]) => ({
    'gap-t1': kick.t1 * period,
    'gap-t2': row.entry + kick.b1 * period - row.catch,
    'gap-t3': row.entry + kick.t2 * period - row.shoulder,
    'gap-t4': row.entry + kick.b2 * period - row.exit,
    'kick1-bottom-to-entry': kick.b1 * period,
    'kick2-top-to-exit': row.entry + kick.t2 * period - row.exit,
  });
  const all = rows.map(gapsOf);
  for (const id of Object.keys(all[0] ?? {}) as (keyof ReturnType<typeof gapsOf>)[]) {
    const gap = average(all.map((each) => each[id]));
    truth.set(id, 1000 * gap);
    truth.set(`${id}-percent`, (100 * gap) / period);
  }
  for (const [alias, id] of [
    ['kick1-top-to-entry', 'gap-t1'],
    ['kick2-bottom-to-exit', 'gap-t4'],
  ] as const)
    for (const ending of ['', '-percent'])
      truth.set(`${alias}${ending}`, truth.get(`${id}${ending}`) ?? Number.NaN);
  for (const id of ['gap-t1', 'gap-t2', 'gap-t3', 'gap-t4'] as const)
    for (const [split, wanted] of [
      ['breathing', breathes],
      ['not-breathing', (i: number) => !breathes(i)],
    ] as const) {
      const gap = average(all.filter((_, i) => wanted(i)).map((each) => each[id]));
      truth.set(`${id}-${split}`, 1000 * gap);
      truth.set(`${id}-${split}-percent`, (100 * gap) / period);
    }
  const total = (wanted: (i: number) => boolean): number => {
    const chosen = all.filter((_, i) => wanted(i));
    return (['gap-t1', 'gap-t2', 'gap-t3', 'gap-t4'] as const).reduce(
      (sum, id) => sum + Math.abs((100 * average(chosen.map((each) => each[id]))) / period),
      0,
    );
  };
  truth.set(
    'gap-total-percent',
    total(() => true),
  );
  truth.set('gap-total-breathing-percent', total(breathes));
  truth.set(
    'gap-total-not-breathing-percent',
    total((i) => !breathes(i)),
  );
  const phase = (from: (row: (typeof rows)[number]) => number, to: (row: (typeof rows)[number]) => number) =>
    average(rows.map((row) => (100 * (to(row) - from(row))) / period));
  truth.set(
    'phase-entry-catch',
    phase(
      (r) => r.entry,
      (r) => r.catch,
    ),
  );
  truth.set(
    'phase-pull',
    phase(
      (r) => r.catch,
      (r) => r.shoulder,
    ),
  );
  truth.set(
    'phase-push',
    phase(
      (r) => r.shoulder,
      (r) => r.exit,
    ),
  );
  truth.set(
    'phase-recovery',
    phase(
      (r) => r.exit,
      (r) => r.entry + period,
    ),
  );
  const downs = [kick.b1 - kick.t1, kick.b2 - kick.t2];
  const between1 = kick.t2 - kick.b1;
  const between2 = 1 + kick.t1 - kick.b2;
  const down = period * average(downs);
  const up = (period * (strokes * between1 + (strokes - 1) * between2)) / (2 * strokes - 1);
  truth.set('down-kick-time', down);
  truth.set('up-kick-time', up);
  truth.set('down-up-ratio', down / up);
  return { instants, truth, stroke: 'butterfly' };
}
