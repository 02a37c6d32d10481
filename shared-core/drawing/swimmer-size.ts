import { sureEnough } from '../follow/follow-confidence';
import { followedBodies } from '../follow/followed-posture';
import { seenBodyLength } from '../follow/seen-body-length';
import { seenBodies } from '../follow/seen-points';
import type { LandmarkName } from '../marks/landmark';
import type { Posture, Swim } from '../swim-file/swim-schema';
import { keptWith } from '../units/kept-with';
import { shownHeight } from './swimmer-room';

/** What a swim knows of where its swimmer is. */
export type SwimmerPoints = Pick<Swim, 'postures' | 'followed' | 'seen'>;

/** Of heights as the machine saw them the highest tenth is left out: now and then it takes a limb for another. Our choice. */
const seenHeightsKept = 0.9;
/** Fingertip to toe with arms stretched, in body heights: the round proportions that rooms are made with, from memory. */
export const stretchedHeights = 1.35;

const followedHeight = keptWith((followed: Swim['followed']): number =>
  Math.max(
    0,
    ...[...followedBodies(followed).values()].map((body) => {
      const sure = [...body].filter(([, { confidence }]) => confidence >= sureEnough);
      return shownHeight({ points: pointsOf(sure) }) ?? 0;
    }),
  ),
);

const seenHeight = keptWith((seen: Swim['seen']): number => {
  const heights = [...seenBodies(seen).values()].flatMap(
    (body) => shownHeight({ points: pointsOf(body) }) ?? [],
  );
  heights.sort((a, b) => a - b);
  return heights[Math.floor((heights.length - 1) * seenHeightsKept)] ?? 0;
});

const pointsOf = (body: Iterable<readonly [LandmarkName, { readonly x: number; readonly y: number }]>) =>
  Object.fromEntries([...body].map(([name, { x, y }]) => [name, { x, y }])) as Posture['points'];

/**
 * How tall the swimmer is in the picture, pixels: the tallest that marks and surely followed points show, else what was
 * seen. Null until some frame has trunk, thigh and shank. Cost: linear in points, once.
 */
export function swimmerHeight({ postures, followed, seen }: SwimmerPoints): number | null {
  const known = Math.max(
    0,
    followedHeight(followed),
    ...postures.map((posture) => shownHeight(posture) ?? 0),
  );
  return known || seenHeight(seen) || null;
}

/**
 * The same, guessed from two neighbouring points where there is nothing better, by usual proportions: enough to decide how
 * large marks are drawn. Null without.
 */
export const guessedHeight = keptWith((points: SwimmerPoints): number | null => {
  const height = swimmerHeight(points);
  if (height !== null) return height;
  const stretched = seenBodyLength(points.postures);
  return stretched === null ? null : stretched / stretchedHeights;
});
