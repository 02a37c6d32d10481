import type { TimedEvent } from '../timed-event';
import type { StrokeClock } from './stroke-clock';

/** Marks of one end of one kick of the stroke: the same place in every stroke. */
interface KickPlace {
  readonly end: 'top' | 'bottom';
  /** Mean place in the stroke, a share of it in [0, 1). */
  readonly place: number;
  readonly marks: readonly TimedEvent[];
}

export interface KickPlaces {
  /** Kicks in a stroke: as many as tops, or bottoms, have places. */
  readonly kicks: number;
  readonly places: readonly KickPlace[];
  /** Marks at the place of the other end: a top where bottoms are, or the reverse. */
  readonly exchanged: readonly TimedEvent[];
  /** Marks at a place where hardly any stroke has one. */
  readonly stray: readonly TimedEvent[];
}

/**
 * Marks of one kind further apart than this, as a share of the stroke, are of different kicks: three kicks are a third of a
 * stroke apart, and marks of one kick stray by less than a tenth. Our default.
 */
const apart = 0.14;

/** Tops and bottoms nearer than this, as a share of the stroke, are at one place. Our default. */
const together = 0.07;

/** A place with fewer marks than this share of the fullest place's may be no kick of the stroke. Our default. */
const fewest = 0.34;

/** Where no place has more marks than this, none can be told to have too few. Our default. */
const toldFrom = 4;

/** Unless more than this share of all marks lie at such places: then each kick has many of its marks missing. Our default. */
const manyStray = 0.15;

/**
 * Which kicks the marks of the feet are, from where in the stroke they fall. Null where they fall everywhere, so that kicks
 * keep no step with the strokes.
 */
export function kickPlaces(
  tops: readonly TimedEvent[],
  bottoms: readonly TimedEvent[],
  clock: StrokeClock,
): KickPlaces | null {
  const found = [placesOf(tops, 'top', clock), placesOf(bottoms, 'bottom', clock)];
  if (found.some((each) => each === null)) return null;
  const { kept, exchanged } = withoutExchanged(
    found.flatMap((each) => each ?? []),
    clock,
  );
  const fullest = Math.max(0, ...kept.map(({ marks }) => marks.length));
  const isRare = ({ marks }: KickPlace): boolean => fullest >= toldFrom && marks.length < fewest * fullest;
  const rare = kept.filter(isRare).flatMap(({ marks }) => marks);
  const all = kept.flatMap(({ marks }) => marks);
  const stray = rare.length > manyStray * all.length ? [] : rare;
  const places = stray.length === 0 ? kept : kept.filter((each) => !isRare(each));
  const count = (end: KickPlace['end']): number => places.filter((each) => each.end === end).length;
  const kicks = Math.max(count('top'), count('bottom'));
  return kicks === 0 ? null : { kicks, places, exchanged, stray };
}

function placesOf(
  marks: readonly TimedEvent[],
  end: KickPlace['end'],
  clock: StrokeClock,
): readonly KickPlace[] | null {
  if (marks.length === 0) return [];
  const at = marks
    .map((mark) => {
      const turns = clock(mark.time);
      return { mark, share: turns - Math.floor(turns) };
    })
    .sort((a, b) => a.share - b.share);
  const gapBefore = (i: number): number =>
    i === 0
      ? (at[0]?.share ?? 0) + 1 - (at.at(-1)?.share ?? 0)
      : (at[i]?.share ?? 0) - (at[i - 1]?.share ?? 0);
  const first = at.findIndex((_, i) => gapBefore(i) > apart);
  if (first < 0) return at.length === 1 ? [{ end, place: at[0]?.share ?? 0, marks }] : null;
  const groups: (typeof at)[] = [];
  for (let k = 0; k < at.length; k++) {
    const i = (first + k) % at.length;
    const each = at[i];
    if (!each) continue;
    if (k === 0 || gapBefore(i) > apart) groups.push([]);
    groups.at(-1)?.push(each);
  }
  return groups.map((group) => {
    const from = group[0]?.share ?? 0;
    const mean = group.reduce((sum, { share }) => sum + ((((share - from) % 1) + 1) % 1), 0) / group.length;
    return {
      end,
      place: (from + mean) % 1,
      marks: group.map(({ mark }) => mark).sort((a, b) => a.time - b.time),
    };
  });
}

/** Share of the strokes of the rarer of two places that have marks at both. */
function shared(a: KickPlace, b: KickPlace, clock: StrokeClock): number {
  // counted from half a stroke beside, so that no mark of the place lies across the border of two strokes
  const strokes = ({ marks }: KickPlace): readonly number[] =>
    marks.map(({ time }) => Math.floor(clock(time) - a.place + 0.5));
  const [few, many] = a.marks.length < b.marks.length ? [strokes(a), strokes(b)] : [strokes(b), strokes(a)];
  const among = new Set(many);
  return few.filter((each) => among.has(each)).length / few.length;
}

const between = (a: number, b: number): number => Math.abs(a - b - Math.round(a - b));

/**
 * Takes out marks of the one end at the place of the other: the fewer of the two, or both where neither is the rule. A stroke
 * that has both there is no stroke with exchanged marks, but one with a quick kick.
 */
function withoutExchanged(
  places: readonly KickPlace[],
  clock: StrokeClock,
): {
  readonly kept: readonly KickPlace[];
  readonly exchanged: readonly TimedEvent[];
} {
  const wrong = new Set<KickPlace>();
  for (const top of places)
    for (const bottom of places) {
      if (top.end !== 'top' || bottom.end !== 'bottom' || between(top.place, bottom.place) > together)
        continue;
      if (shared(top, bottom, clock) > 0.5) continue;
      if (top.marks.length <= bottom.marks.length) wrong.add(top);
      if (bottom.marks.length <= top.marks.length) wrong.add(bottom);
    }
  return {
    kept: places.filter((each) => !wrong.has(each)),
    exchanged: [...wrong].flatMap(({ marks }) => marks),
  };
}

/**
 * Whether two marks follow one another in the stroke with no kick end between, told by the places of the stroke's kicks. Kicks
 * of one stroke are unevenly spaced, so that no length tells it.
 */
export function inTurn(feet: KickPlaces, clock: StrokeClock): (from: TimedEvent, to: TimedEvent) => boolean {
  const places = [...feet.places].sort((a, b) => a.place - b.place);
  const placeOf = new Map(places.flatMap(({ marks }, i) => marks.map((mark) => [mark, i] as const)));
  return (from, to) => {
    const [a, b] = [placeOf.get(from), placeOf.get(to)];
    if (a === undefined || b === undefined) return false;
    return (a + 1) % places.length === b && clock(to.time) - clock(from.time) < 1;
  };
}
