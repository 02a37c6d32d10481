import type { EventKind } from '#core/marks/event-kind';
import type { Body, PoolXY } from './swimmer-model';
import { waterSurface } from './water-surface';

export interface TrueEvent {
  readonly kind: EventKind;
  /** Real seconds from the first picture. */
  readonly time: number;
}

const step = 1 / 2000;

/** Times in [0, length] where `value` crosses zero in the given way, by scanning and halving. */
function crossings(value: (time: number) => number, length: number, way: 'up' | 'down'): number[] {
  const found: number[] = [];
  let before = value(0);
  for (let i = 0; (i + 1) * step <= length; i++) {
    const after = value((i + 1) * step);
    if (before * after < 0 && after > before === (way === 'up')) {
      let low = i * step;
      let high = low + step;
      for (let k = 0; k < 40; k++) {
        const middle = (low + high) / 2;
        if (value(middle) * before > 0) low = middle;
        else high = middle;
      }
      found.push((low + high) / 2);
    }
    before = after;
  }
  return found;
}

const hand = (body: Body): PoolXY => ({
  x: (body.wrist.x + body.fingertip.x) / 2,
  y: (body.wrist.y + body.fingertip.y) / 2,
});

/**
 * Every event of the drawn swimmer, found in the drawn points alone. Toe: turning points of its height. Entry and exit:
 * the fingertip through the drawn surface, down and up. The hand's middle (between wrist and fingertip): its forward
 * speed ends (catch), it passes the shoulder, and, pressing back, it is closest to the other hand (navel). Breath and
 * head in: the mouth through the drawn surface, up and down.
 */
export function trueEvents(
  body: (time: number) => Body,
  length: number,
  kind: 'butterfly' | 'kick',
): readonly TrueEvent[] {
  const h = 1e-4;
  const slope =
    (of: (body: Body) => number) =>
    (time: number): number =>
      (of(body(time + h)) - of(body(time - h))) / (2 * h);
  const over = (point: (body: Body) => PoolXY) => (time: number) => {
    const { x, y } = point(body(time));
    return y - waterSurface(x, time);
  };
  const under = (time: number): boolean => {
    const now = body(time);
    return hand(now).y < now.shoulder.y;
  };
  const list = (event: EventKind, times: readonly number[]): TrueEvent[] =>
    times.map((time) => ({ kind: event, time }));
  const toeRate = slope((now) => now.toe.y);
  const fingertip = over((now) => now.fingertip);
  const mouth = over((now) => now.mouth);
  const ofFeet = [
    ...list('kick-top', crossings(toeRate, length, 'down')),
    ...list('kick-bottom', crossings(toeRate, length, 'up')),
  ];
  if (kind === 'kick') return ofFeet.sort((a, b) => a.time - b.time);
  const forward = slope((now) => hand(now).x);
  const ahead = (time: number): number => {
    const now = body(time);
    return hand(now).x - now.shoulder.x;
  };
  return [
    ...ofFeet,
    ...list('entry', crossings(fingertip, length, 'down')),
    ...list(
      'catch',
      crossings(forward, length, 'down').filter((time) => fingertip(time) < 0 && ahead(time) > 0),
    ),
    ...list('shoulder', crossings(ahead, length, 'down').filter(under)),
    ...list(
      'navel',
      crossings(
        slope((now) => now.handSide),
        length,
        'up',
      ).filter((time) => under(time) && ahead(time) < 0),
    ),
    ...list('exit', crossings(fingertip, length, 'up')),
    ...list('breath', crossings(mouth, length, 'up')),
    ...list('head-in', crossings(mouth, length, 'down')),
  ].sort((a, b) => a.time - b.time);
}
