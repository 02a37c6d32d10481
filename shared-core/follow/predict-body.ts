import type { LandmarkName } from '../marks/landmark';
import type { Point } from '../units/brand';

/** What each outer landmark hangs on; the others go their own way. */
const hangsOn: Readonly<Partial<Record<LandmarkName, LandmarkName>>> = {
  elbow: 'shoulder',
  wrist: 'elbow',
  fingertip: 'wrist',
  knee: 'hip',
  ankle: 'knee',
  toe: 'ankle',
};

/** From the trunk outward, so that what a landmark hangs on is predicted before it. */
const outward: readonly LandmarkName[] = [
  'shoulder',
  'hip',
  'ear',
  'elbow',
  'wrist',
  'fingertip',
  'knee',
  'ankle',
  'toe',
];

export type BodyPlaces = ReadonlyMap<LandmarkName, Point>;

/**
 * Where the body goes if it moves on as it did: shoulder, hip and ear straight on, each limb turning about its inner
 * end by as much and growing in the picture by as much as in the last step. A swinging arm so keeps swinging instead of
 * flying off straight. `before` and `now` are the last two pictures; a landmark missing in `before` stays where it is,
 * carried by what it hangs on.
 */
export function predictBody(before: BodyPlaces, now: BodyPlaces): BodyPlaces {
  const next = new Map<LandmarkName, Point>();
  for (const name of outward) {
    const here = now.get(name);
    if (!here) continue;
    const was = before.get(name);
    const holder = hangsOn[name];
    const base = holder && now.get(holder);
    const baseNext = holder && next.get(holder);
    const baseWas = holder && before.get(holder);
    if (!base || !baseNext) {
      next.set(name, was ? { x: 2 * here.x - was.x, y: 2 * here.y - was.y } : here);
      continue;
    }
    const x = here.x - base.x;
    const y = here.y - base.y;
    if (!was || !baseWas) {
      next.set(name, { x: baseNext.x + x, y: baseNext.y + y });
      continue;
    }
    const wasX = was.x - baseWas.x;
    const wasY = was.y - baseWas.y;
    const length = Math.hypot(x, y);
    const wasLength = Math.hypot(wasX, wasY);
    const turn = Math.atan2(wasX * y - wasY * x, wasX * x + wasY * y);
    const grow = length > 0 ? Math.max(0.6, Math.min(1.6, (2 * length - wasLength) / length)) : 1;
    const cos = grow * Math.cos(turn);
    const sin = grow * Math.sin(turn);
    next.set(name, { x: baseNext.x + cos * x - sin * y, y: baseNext.y + sin * x + cos * y });
  }
  return next;
}
