import { sureEnough } from '../follow/follow-confidence';
import { followedBodies } from '../follow/followed-posture';
import { seenBodyLength } from '../follow/seen-body-length';
import { seenBodies } from '../follow/seen-points';
import type { LandmarkName } from '../marks/landmark';
import type { Posture, Swim } from '../swim-file/swim-schema';
import type { Point } from '../units/point';
import { keptWith } from '../units/kept-with';
import { shownHeight } from './swimmer-room';

/** What a swim knows of where its swimmer is. */
export type SwimmerPoints = Pick<Swim, 'postures' | 'followed' | 'seen'>;

/** Of heights as the machine saw them the highest tenth is left out: now and then it takes a limb for another. Our choice. */
const seenHeightsKept = 0.9;
/** Fingertip to toe with arms stretched, in body heights: the round proportions that rooms are made with, from memory. */
export const stretchedHeights = 1.35;

/** What tells how tall a body is; asked of every frame of a film, so nothing else is looked at. */
const tellingPoints = ['shoulder', 'hip', 'knee', 'ankle'] as const;

/** The height that points of a body show; 0 where they don't, or where one of them is `lost`. */
function heightOf<At extends Point>(
  body: ReadonlyMap<LandmarkName, At>,
  lost: (at: At) => boolean = () => false,
): number {
  const points: Posture['points'] = {};
  for (const name of tellingPoints) {
    const at = body.get(name);
    if (!at || lost(at)) return 0;
    points[name] = at;
  }
  return shownHeight({ points }) ?? 0;
}

const followedHeight = keptWith((followed: Swim['followed']): number => {
  let tallest = 0;
  for (const body of followedBodies(followed).values())
    tallest = Math.max(
      tallest,
      heightOf(body, ({ confidence }) => confidence < sureEnough),
    );
  return tallest;
});

const seenHeight = keptWith((seen: Swim['seen']): number => {
  const heights = [...seenBodies(seen).values()].map((body) => heightOf(body)).filter((height) => height > 0);
  heights.sort((a, b) => a - b);
  return heights[Math.floor((heights.length - 1) * seenHeightsKept)] ?? 0;
});

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
