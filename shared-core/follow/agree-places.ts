import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/point';
import { alignBody } from './align-body';
import type { Expected } from './body-priors';
import type { GreyLevel } from './grey-pyramid';
import { type Limb, limbs } from './limb';
import { addLooks, type WeighedTemplate } from './limb-looks';
import { type LimbTemplate, limbTemplate } from './limb-template';

/** A picture on which places of landmarks have been said, by the coach or by following. */
export interface SaidPicture {
  /** Real seconds. */
  readonly time: number;
  readonly pyramid: readonly GreyLevel[];
  /** What was said and how well, in pixels of the pyramid's first level. */
  readonly said: ReadonlyMap<LandmarkName, Expected>;
}

type Places = ReadonlyMap<LandmarkName, Point>;

interface Look {
  readonly picture: number;
  readonly template: LimbTemplate;
}

/** Looks taken from so many pictures, the nearest in time, are laid on one. Our choice: more cost more and say the same. */
const mostLooks = 6;
/** A look this unlike the limb here, share of its own contrast, counts half. Set on the sample clips. */
const strangeResidual = 0.6;
/** However well looks agree, a mark is not moved by more than this share of the body length. Our choice: four standard deviations. */
const mostShare = 0.011;
/** Pictures of one size: what was said is near. */
const sizes = 1;

/**
 * Where landmarks lie once all pictures on which they were said have been compared. Hands that mark err by a pixel or two
 * each time, and everything followed from one mark errs with it; but how a limb looks at one mark tells where the
 * others should have been. So every picture's body is laid anew by how its limbs look on all the others and on itself, held
 * by what was said there, `rounds` times over: what differs from mark to mark evens out. Landmarks that hold no limb with
 * both ends said stay where they are. Nothing said is changed: this is what following starts from.
 *
 * @param bodyLength fingertip to toe, pixels
 */
export function agreePlaces(
  pictures: readonly SaidPicture[],
  bodyLength: number,
  rounds: number,
  start?: readonly Places[],
): readonly Places[] {
  let places = pictures.map(
    ({ said }, i): Places =>
      new Map([...said].map(([name, { at }]): [LandmarkName, Point] => [name, start?.[i]?.get(name) ?? at])),
  );
  for (let round = 0; round < rounds; round++) {
    const looks = looksOn(pictures, places, bodyLength);
    places = pictures.map((picture, i) => {
      const own = places[i] ?? new Map<LandmarkName, Point>();
      const templates = limbs.flatMap((limb) => weighedLooks(looks.get(limb) ?? [], limb, i, pictures, own));
      if (templates.length === 0) return own;
      const pyramid = picture.pyramid.slice(0, sizes);
      const laid = alignBody(pyramid, templates, picture.said, []).points;
      return new Map(
        [...own].map(([name, at]): [LandmarkName, Point] => {
          const said = picture.said.get(name);
          const moved = laid.get(name);
          return [name, said && moved ? near(said.at, moved, mostShare * bodyLength) : at];
        }),
      );
    });
  }
  return places;
}

/** Every limb with both ends known, as it looks on each picture. */
function looksOn(
  pictures: readonly SaidPicture[],
  places: readonly Places[],
  bodyLength: number,
): ReadonlyMap<Limb, readonly Look[]> {
  return new Map(
    limbs.map((limb) => [
      limb,
      pictures.flatMap(({ pyramid }, picture): Look[] => {
        const a = places[picture]?.get(limb.from);
        const b = places[picture]?.get(limb.to);
        const template = a && b ? limbTemplate(pyramid.slice(0, sizes), limb, a, b, bodyLength) : null;
        return template ? [{ picture, template }] : [];
      }),
    ]),
  );
}

/** A limb's looks to be laid on a picture: its own, and the others' by how like it they are. Weights sum to one. */
function weighedLooks(
  looks: readonly Look[],
  limb: Limb,
  here: number,
  pictures: readonly SaidPicture[],
  places: Places,
): readonly WeighedTemplate[] {
  const level = pictures[here]?.pyramid[0];
  const a = places.get(limb.from);
  const b = places.get(limb.to);
  if (!level || !a || !b) return [];
  const time = pictures[here]?.time ?? 0;
  const apart = ({ picture }: Look): number => Math.abs((pictures[picture]?.time ?? 0) - time);
  const nearest = [...looks].sort((one, other) => apart(one) - apart(other)).slice(0, mostLooks);
  const weighed = nearest.map(({ picture, template }) => ({
    template,
    weight:
      picture === here ? 1 : 1 / (1 + (strangeness(level, template, limb, a, b) / strangeResidual) ** 4),
  }));
  const sum = weighed.reduce((total, { weight }) => total + weight, 0);
  return weighed.map(({ template, weight }) => ({ template, weight: weight / sum }));
}

/** How unlike its look a limb is between two places, share of the look's own contrast. */
function strangeness(level: GreyLevel, template: LimbTemplate, limb: Limb, a: Point, b: Point): number {
  const index = new Map([
    [limb.from, 0],
    [limb.to, 1],
  ]);
  const state = Float64Array.of(a.x, a.y, b.x, b.y);
  const found = addLooks(
    level,
    0,
    [{ template, weight: 1 }],
    index,
    state,
    new Float64Array(16),
    new Float64Array(4),
  );
  return Math.sqrt(found.get(limb)?.squares ?? Number.POSITIVE_INFINITY);
}

function near(said: Point, at: Point, most: number): Point {
  const x = at.x - said.x;
  const y = at.y - said.y;
  const share = Math.min(1, most / Math.max(Math.hypot(x, y), 1e-9));
  return { x: said.x + share * x, y: said.y + share * y };
}
