import { agreePlaces, type SaidPicture } from './agree-places';
import type { Expected } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import { limbs } from './limb';
import type { MarkedPoint } from './marked-points';
import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { type GreyPicture, ownPlace, shownPlace } from './grey-picture';

/** Places by landmark and index of the picture. */
export type KnownPlaces = ReadonlyMap<LandmarkName, ReadonlyMap<number, Point>>;

/** What was found on a piece before: places, and what its marked pictures had agreed on. */
export interface FoundBefore {
  placeOn(index: number, landmark: LandmarkName): Point | null;
  readonly known: KnownPlaces;
}

/** A coach's mark errs by about this share of the body length, a followed point beside it by this. Our defaults. */
export const markShare = 0.0027;
const foundShare = 0.02;
/** Rounds of comparing before anything was followed, and each time after. Our choice: more bring little. */
const rounds = 4;
const roundsAgain = 2;

/**
 * The piece's marks, each moved to where all of them together say it lies (`marked`), and beside them, once the piece
 * was followed, the other ends of the limbs they hold (`known`): a single mark then shows how its limbs look there.
 */
export function agreedPlaces(
  {
    marks,
    times,
    bodyLength,
  }: {
    readonly marks: readonly MarkedPoint[];
    readonly times: readonly number[];
    readonly bodyLength: number;
  },
  pictures: readonly GreyPicture[],
  pyramids: readonly (readonly GreyLevel[])[],
  before: FoundBefore | null,
): { readonly marked: KnownPlaces; readonly known: KnownPlaces } {
  const first = pictures[0]?.frame ?? 0;
  const indexes = [...new Set(marks.map(({ frame }) => frame - first))].sort((a, b) => a - b);
  const isMark = new Set(marks.map(({ frame, landmark }) => `${landmark}${frame - first}`));
  const corner = (index: number): Pick<GreyPicture, 'x' | 'y'> => pictures[index] ?? { x: 0, y: 0 };
  const said = indexes.map((index): SaidPicture => {
    const places = new Map<LandmarkName, Expected>();
    for (const { frame, landmark, x, y } of marks)
      if (frame - first === index)
        places.set(landmark, { at: ownPlace(corner(index), { x, y }), sd: markShare * bodyLength });
    for (const { from, to } of limbs)
      for (const [one, other] of [
        [from, to],
        [to, from],
      ] as const) {
        const at = isMark.has(`${one}${index}`) && !places.has(other) ? before?.placeOn(index, other) : null;
        if (at) places.set(other, { at: ownPlace(corner(index), at), sd: foundShare * bodyLength });
      }
    return { time: times[index] as number, pyramid: pyramids[index] ?? [], said: places };
  });
  const start = indexes.map(
    (index) =>
      new Map(
        [...(before?.known ?? [])].flatMap(([name, at]): [LandmarkName, Point][] => {
          const place = at.get(index);
          return place && isMark.has(`${name}${index}`) ? [[name, ownPlace(corner(index), place)]] : [];
        }),
      ),
  );
  const agreed = agreePlaces(said, bodyLength, before ? roundsAgain : rounds, start);
  const marked = new Map<LandmarkName, Map<number, Point>>();
  const known = new Map<LandmarkName, Map<number, Point>>();
  agreed.forEach((places, i) => {
    const index = indexes[i] as number;
    for (const [name, own] of places) {
      const at = shownPlace(corner(index), own);
      keep(known, name, index, at);
      if (isMark.has(`${name}${index}`)) keep(marked, name, index, at);
    }
  });
  return { marked, known };
}

function keep(
  into: Map<LandmarkName, Map<number, Point>>,
  name: LandmarkName,
  index: number,
  at: Point,
): void {
  const own = into.get(name) ?? new Map<number, Point>();
  own.set(index, at);
  into.set(name, own);
}
