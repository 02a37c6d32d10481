import type { EventKind } from '#core/marks/event-kind';
import { type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { EventMark, Swim } from '#core/swim-file/swim-schema';
import type { DrawWish } from './swum';

/**
 * What the marks that are left can tell of what is missing. `whole`: nothing is. `told`: marks beside one another contradict
 * what is wrong. `untold`: nothing in them does, but what people can swim.
 */
export type Telling = 'whole' | 'told' | 'untold';

export interface Regime {
  readonly name: string;
  readonly telling: Telling;
  readonly wish: DrawWish;
  readonly spoil: (swim: Swim, random: () => number) => Swim;
}

type Keep = (event: EventMark, place: number, of: readonly EventMark[]) => boolean;

const hands = ['entry', 'catch', 'shoulder', 'navel', 'exit'] as const satisfies readonly EventKind[];
const feet = ['kick-top', 'kick-bottom'] as const satisfies readonly EventKind[];
const isFoot = (kind: EventKind): boolean => kind === 'kick-top' || kind === 'kick-bottom';
const pick = <T>(of: readonly T[], random: () => number): T => of[Math.floor(random() * of.length)] as T;

/** Keeps events by their kind and their place among those of their kind. */
function kept(swim: Swim, keep: Keep): Swim {
  const rows = new Map<EventKind, EventMark[]>();
  for (const event of [...swim.events].sort((a, b) => a.frame - b.frame))
    rows.set(event.kind, [...(rows.get(event.kind) ?? []), event]);
  const events = [...rows.values()].flatMap((row) => row.filter((event, i) => keep(event, i, row)));
  return { ...swim, events };
}

/** Kicks in order: each top with the bottom after it. */
function kicksOf(swim: Swim): readonly (readonly EventMark[])[] {
  const marks = swim.events.filter(({ kind }) => isFoot(kind)).sort((a, b) => a.frame - b.frame);
  const kicks: EventMark[][] = [];
  for (const mark of marks) {
    const last = kicks.at(-1);
    if (mark.kind === 'kick-bottom' && last?.length === 1) last.push(mark);
    else kicks.push([mark]);
  }
  return kicks;
}

function without(swim: Swim, marks: Iterable<EventMark>): Swim {
  const gone = new Set(marks);
  return { ...swim, events: swim.events.filter((event) => !gone.has(event)) };
}

/** Some of a list, none twice. */
function some<T>(of: readonly T[], count: number, random: () => number): readonly T[] {
  const left = [...of];
  const out: T[] = [];
  while (out.length < count && left.length > 0)
    out.push(...left.splice(Math.floor(random() * left.length), 1));
  return out;
}

const lostAtRandom: Regime['spoil'] = (swim, random) => {
  const chances = new Map<EventKind, number>(
    [...hands, ...feet, 'breath' as const].map((kind) => [kind, 0.5 * random()]),
  );
  return kept(swim, ({ kind }) => random() >= (chances.get(kind) ?? 0));
};

const lostOf =
  (chance: number): Regime['spoil'] =>
  (swim, random) =>
    kept(swim, () => random() >= chance);

const noneOf =
  (...kinds: readonly EventKind[]): Regime['spoil'] =>
  (swim) =>
    kept(swim, ({ kind }) => !kinds.includes(kind));

const everySecond =
  (...kinds: readonly EventKind[]): Regime['spoil'] =>
  (swim) =>
    kept(swim, ({ kind }, place) => !kinds.includes(kind) || place % 2 === 0);

const everySecondKick: Regime['spoil'] = (swim) =>
  without(
    swim,
    kicksOf(swim)
      .filter((_, i) => i % 2 === 1)
      .flat(),
  );

const runOfKicks: Regime['spoil'] = (swim, random) => {
  const kicks = kicksOf(swim);
  const long = Math.max(1, Math.round(kicks.length * (0.2 + 0.4 * random())));
  const from = Math.floor(random() * (kicks.length - long + 1));
  return without(swim, kicks.slice(from, from + long).flat());
};

const runOfStrokes: Regime['spoil'] = (swim, random) => {
  const frames = swim.events.map(({ frame }) => frame);
  const [first, last] = [Math.min(...frames), Math.max(...frames)];
  const long = (0.2 + 0.3 * random()) * (last - first);
  const from = first + random() * (last - first - long);
  return { ...swim, events: swim.events.filter(({ frame }) => frame < from || frame > from + long) };
};

const firstStrokeOnly: Regime['spoil'] = (swim) => {
  const entries = swim.events.filter(({ kind }) => kind === 'entry').sort((a, b) => a.frame - b.frame);
  const until = (entries[1]?.frame ?? 0) - 0.12 * ((entries[1]?.frame ?? 0) - (entries[0]?.frame ?? 0));
  return kept(swim, ({ kind, frame }) => !isFoot(kind) || frame < until);
};

const kickMarksLost =
  (count: number): Regime['spoil'] =>
  (swim, random) =>
    without(
      swim,
      some(
        swim.events.filter(({ kind }) => isFoot(kind)),
        count,
        random,
      ),
    );

const entryLost: Regime['spoil'] = (swim, random) => {
  const entries = swim.events.filter(({ kind }) => kind === 'entry').sort((a, b) => a.frame - b.frame);
  return without(swim, [pick(entries.slice(1, -1).length > 0 ? entries.slice(1, -1) : entries, random)]);
};

const doubled: Regime['spoil'] = (swim, random) => {
  const twice = some(swim.events, 1 + Math.floor(3 * random()), random);
  const far = (): number => (random() < 0.5 ? -1 : 1) * (1 + Math.floor(3 * random()));
  return {
    ...swim,
    events: [
      ...swim.events,
      ...twice.map((event, i) => ({ ...event, id: `d${i}`, frame: Math.max(0, event.frame + far()) })),
    ],
  };
};

const swapped = (swim: Swim, a: EventKind, b: EventKind, among: ReadonlySet<EventMark> | null): Swim => ({
  ...swim,
  events: swim.events.map((event) =>
    among && !among.has(event)
      ? event
      : { ...event, kind: event.kind === a ? b : event.kind === b ? a : event.kind },
  ),
});

const allExchanged: Regime['spoil'] = (swim) => swapped(swim, 'kick-top', 'kick-bottom', null);

const kicksExchanged: Regime['spoil'] = (swim, random) => {
  const kicks = kicksOf(swim).filter((kick) => kick.length === 2);
  return swapped(
    swim,
    'kick-top',
    'kick-bottom',
    new Set(some(kicks, 1 + Math.floor(2 * random()), random).flat()),
  );
};

const handsSwapped: Regime['spoil'] = (swim, random) => {
  const [a, b] = some(['catch', 'shoulder', 'exit'] as const, 2, random);
  return a && b ? swapped(swim, a, b, null) : swim;
};

const oneStrokesHandsSwapped: Regime['spoil'] = (swim, random) => {
  const [a, b] = some(['catch', 'shoulder', 'exit'] as const, 2, random);
  const entries = swim.events.filter(({ kind }) => kind === 'entry').sort((x, y) => x.frame - y.frame);
  const at = Math.floor(random() * (entries.length - 1));
  const [from, to] = [entries[at]?.frame ?? 0, entries[at + 1]?.frame ?? 0];
  const among = new Set(swim.events.filter(({ frame }) => frame >= from && frame < to));
  return a && b ? swapped(swim, a, b, among) : swim;
};

const shifted =
  (whole: boolean): Regime['spoil'] =>
  (swim, random) => {
    const base: EventKind = swim.events.some(({ kind }) => kind === 'entry') ? 'entry' : 'kick-top';
    const starts = swim.events.filter(({ kind }) => kind === base).map(({ frame }) => frame);
    const [first, last] = [Math.min(...starts), Math.max(...starts)];
    const stroke = Math.round((last - first) / Math.max(1, starts.length - 1));
    const by = random() < 0.5 && first > stroke ? -stroke : stroke;
    const kind = pick(base === 'entry' ? [...hands.slice(1), ...feet] : feet, random);
    const of = swim.events.filter((event) => event.kind === kind);
    const moved = new Set(whole ? of : some(of, 1, random));
    return {
      ...swim,
      events: swim.events.map((event) =>
        moved.has(event) ? { ...event, frame: Math.max(0, event.frame + by) } : event,
      ),
    };
  };

const landmarksLost =
  (...names: readonly LandmarkName[]): Regime['spoil'] =>
  (swim) => ({
    ...swim,
    postures: swim.postures.map((posture) => ({
      ...posture,
      points: Object.fromEntries(
        landmarkNames.flatMap((name) => {
          const point = posture.points[name];
          return point && !names.includes(name) ? [[name, point]] : [];
        }),
      ),
    })),
  });

const wave = ['shoulder', 'hip', 'knee', 'ankle', 'toe'] as const satisfies readonly LandmarkName[];

const linesKept =
  (keep: (frame: number, place: number, swim: Swim) => boolean): Regime['spoil'] =>
  (swim) => ({ ...swim, postures: swim.postures.filter(({ frame }, i) => keep(frame, i, swim)) });

const linesAtEvents: Regime['spoil'] = (swim) => {
  const near = new Set(swim.events.flatMap(({ frame }) => frame));
  const step = (swim.postures[1]?.frame ?? 1) - (swim.postures[0]?.frame ?? 0);
  return linesKept((frame) => [...near].some((each) => Math.abs(each - frame) <= step / 2))(
    swim,
    Math.random,
  );
};

const linesClustered: Regime['spoil'] = (swim, random) => {
  const many = swim.postures.length;
  const spots = Array.from({ length: 2 + Math.floor(3 * random()) }, () => random() * many);
  const reach = many * (0.02 + 0.06 * random());
  return linesKept((_, place) => spots.some((spot) => Math.abs(spot - place) < reach))(swim, random);
};

const linesSparse: Regime['spoil'] = (swim, random) => {
  const nth = 3 + Math.floor(8 * random());
  return linesKept((_, place) => place % nth === 0)(swim, random);
};

/** The film taken as `by` times slower than it was shot: its times come out `by` times too short. */
const slowed =
  (by: number): Regime['spoil'] =>
  (swim) => ({ ...swim, clip: { ...swim.clip, slowdown: { factor: by, source: 'coach' } } });

const stroke = { base: 'stroke' } as const;
const kick = { base: 'kick' } as const;
const strokeLined = { base: 'stroke', lines: true } as const;
const kickLined = { base: 'kick', lines: true } as const;
const lined = { lines: true } as const;
const strokeOnly = { base: 'stroke', lines: false } as const;
const kickOnly = { base: 'kick', lines: false } as const;

const regime = (name: string, telling: Telling, wish: DrawWish, spoil: Regime['spoil']): Regime => ({
  name,
  telling,
  wish,
  spoil,
});

/** Every way of marking that is tried, in the order of the table. */
export const regimes: readonly Regime[] = [
  regime('everything marked', 'whole', {}, (swim) => swim),
  regime('butterfly, everything marked', 'whole', stroke, (swim) => swim),
  regime('kicking, everything marked', 'whole', kick, (swim) => swim),
  regime('each kind lost with a chance of 0 to 50 %', 'told', {}, lostAtRandom),
  regime('every mark lost with a chance of 50 %', 'told', {}, lostOf(0.5)),
  regime('butterfly, no kick tops', 'told', stroke, noneOf('kick-top')),
  regime('butterfly, no kick bottoms', 'told', stroke, noneOf('kick-bottom')),
  regime('butterfly, no kicks', 'told', stroke, noneOf(...feet)),
  regime('butterfly, no hand entries', 'told', stroke, noneOf('entry')),
  regime(
    'butterfly, hand entries and kicks only',
    'told',
    stroke,
    noneOf('catch', 'shoulder', 'navel', 'exit'),
  ),
  regime('butterfly with body lines, every second kick', 'told', strokeLined, everySecondKick),
  regime('butterfly without body lines, every second kick', 'untold', strokeOnly, everySecondKick),
  regime('butterfly, every second kick top', 'told', stroke, everySecond('kick-top')),
  regime('butterfly, every second hand entry', 'told', stroke, everySecond('entry')),
  regime('butterfly, hands of every second stroke', 'told', stroke, everySecond(...hands)),
  regime('butterfly, kicks of the first stroke only', 'told', stroke, firstStrokeOnly),
  regime('butterfly, a run of strokes lost', 'told', stroke, runOfStrokes),
  regime('butterfly, a run of kicks lost', 'told', stroke, runOfKicks),
  regime('butterfly, one hand entry lost', 'told', stroke, entryLost),
  regime('butterfly, three kick marks lost', 'told', stroke, kickMarksLost(3)),
  regime('kicking, no kick tops', 'told', kick, noneOf('kick-top')),
  regime('kicking, two or three kick marks lost', 'told', kick, (swim, random) =>
    kickMarksLost(random() < 0.5 ? 2 : 3)(swim, random),
  ),
  regime('kicking, a run of kicks lost', 'told', kick, runOfKicks),
  regime('kicking, every second kick top', 'told', kick, everySecond('kick-top')),
  regime('kicking with body lines, every second kick', 'told', kickLined, everySecondKick),
  regime('kicking without body lines, every second kick', 'untold', kickOnly, everySecondKick),
  regime('one to three marks doubled', 'told', {}, doubled),
  regime('tops and bottoms of one or two kicks exchanged', 'told', {}, kicksExchanged),
  regime('with body lines, all tops and bottoms exchanged', 'told', lined, allExchanged),
  regime('butterfly without body lines, all tops and bottoms exchanged', 'untold', strokeOnly, allExchanged),
  regime('kicking without body lines, all tops and bottoms exchanged', 'untold', kickOnly, allExchanged),
  regime('butterfly, two kinds of hand marks exchanged', 'told', stroke, handsSwapped),
  regime('butterfly, hand marks of one stroke exchanged', 'told', stroke, oneStrokesHandsSwapped),
  regime('one mark shifted by a cycle', 'told', {}, shifted(false)),
  regime('a kind of mark shifted by a cycle', 'told', {}, shifted(true)),
  ...wave.map((name) => regime(`no ${name}`, 'told', lined, landmarksLost(name))),
  ...wave.flatMap((a, i) =>
    wave.slice(i + 1).map((b) => regime(`no ${a} and no ${b}`, 'told', lined, landmarksLost(a, b))),
  ),
  regime('body lines at events only', 'told', lined, linesAtEvents),
  regime('body lines sparse', 'told', lined, linesSparse),
  regime('body lines in clusters', 'told', lined, linesClustered),
  ...[2, 4].flatMap((by) => [
    regime(`slow motion taken ${by} times too slow`, 'untold', {}, slowed(by)),
    regime(`slow motion taken ${by} times too quick`, 'untold', {}, slowed(1 / by)),
  ]),
];
