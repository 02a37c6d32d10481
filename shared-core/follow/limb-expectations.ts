import type { ExpectedLength, ExpectedTurn } from './body-priors';
import { armLandmarks, type Limb, limbs } from './limb';
import type { LandmarkName } from '../marks/landmark';
import type { KnownPlaces } from './agreed-places';
import { around } from './marks-around';

/** A rigid limb's seen length strays by this share of the body length. Our default. */
const lengthSd = 0.006;
/**
 * An arm swings out of the picture's plane and back between two marks: by so much of its length may it then look shorter
 * or longer than they tell, but never longer than on the mark where it looks longest. Set on the sample clips.
 */
const armTurn = 0.6;
/**
 * Hands and feet turn little about their joint: so far, share of their own length, from what their marks show. Our default;
 * without it a foot was at times laid back over the shank, where it looks as well.
 */
const turnShare = 0.6;
/** Hands and feet, and where the limb before them begins. */
const turning: ReadonlyMap<LandmarkName, LandmarkName> = new Map([
  ['fingertip', 'elbow'],
  ['toe', 'knee'],
]);
/** Seconds from a mark after which an arm may have turned as far as it can. */
const turnSeconds = 0.12;

/**
 * How long every limb that is marked somewhere should look on a picture, and how hands and feet are turned there: between
 * what the marks before and after show. `marked` and `times` go by the pictures' indexes.
 */
export function limbExpectations(
  marked: KnownPlaces,
  times: readonly number[],
  bodyLength: number,
): (index: number) => readonly ExpectedLength[] {
  const framesOf = (...names: readonly LandmarkName[]): readonly number[] =>
    [...(marked.get(names[0] ?? 'toe')?.keys() ?? [])]
      .filter((frame) => names.every((name) => marked.get(name)?.has(frame)))
      .sort((p, q) => p - q);
  const held = limbs.flatMap((limb) => {
    const frames = framesOf(limb.from, limb.to);
    return frames.length > 0 ? [{ limb, frames }] : [];
  });
  const lengthAt = (limb: Limb, index: number): number => {
    const a = marked.get(limb.from)?.get(index);
    const b = marked.get(limb.to)?.get(index);
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
  };
  const turnOn = (limb: Limb, index: number): { readonly turn?: ExpectedTurn } => {
    const before = turning.get(limb.to);
    if (!before) return {};
    const frames = framesOf(before, limb.from, limb.to);
    const { before: earlier, after: later } = around(frames, index);
    const told = [earlier, later].flatMap((frame) => {
      const [o, a, b] = [before, limb.from, limb.to].map((name) =>
        frame === null ? undefined : marked.get(name)?.get(frame),
      );
      if (!o || !a || !b || frame === null) return [];
      const [px, py, qx, qy] = [a.x - o.x, a.y - o.y, b.x - a.x, b.y - a.y];
      const square = px * px + py * py;
      if (square < 9) return [];
      return [
        {
          frame,
          along: (qx * px + qy * py) / square,
          across: (qy * px - qx * py) / square,
          length: Math.hypot(qx, qy),
        },
      ];
    });
    const [one, other = one] = told;
    if (!one || !other) return {};
    const share = other.frame > one.frame ? (index - one.frame) / (other.frame - one.frame) : 0;
    const mix = (p: number, q: number): number => p + share * (q - p);
    return {
      turn: {
        before,
        along: mix(one.along, other.along),
        across: mix(one.across, other.across),
        sd: turnShare * mix(one.length, other.length),
      },
    };
  };
  const expectedOn = (index: number): readonly ExpectedLength[] =>
    held.map(({ limb, frames }) => {
      const { before, after, share } = around(frames, index);
      const a = lengthAt(limb, before ?? after ?? 0);
      const b = lengthAt(limb, after ?? before ?? 0);
      const secondsTo = (frame: number | null): number =>
        frame === null ? Infinity : Math.abs((times[frame] as number) - (times[index] as number));
      const since = Math.min(secondsTo(before), secondsTo(after));
      const most = Math.max(...frames.map((frame) => lengthAt(limb, frame)));
      const turning = armLandmarks.has(limb.to) ? armTurn * most * Math.min(1, since / turnSeconds) : 0;
      return {
        from: limb.from,
        to: limb.to,
        length: a + share * (b - a),
        // a limb that looks longer on one mark than on the next turns toward the camera: then it may be anything between
        sd: lengthSd * bodyLength + Math.abs(b - a) * Math.sqrt(share * (1 - share)) + turning,
        most,
        mostSd: lengthSd * bodyLength,
        ...turnOn(limb, index),
      };
    });
  // every picture is asked for many times
  const expected = times.map((_, index) => expectedOn(index));
  return (index) => expected[index] ?? [];
}
