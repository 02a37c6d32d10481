import type { EventKind } from '#core/marks/event-kind';
import type { BodyPoints, PoolXY } from './swimmer-model';

export interface TrueEvent {
  readonly kind: EventKind;
  /** Real seconds from the first picture. */
  readonly time: number;
}

const step = 1 / 2000;

/** Times in [0, length] where `value` crosses zero in the given way, by scanning and halving. */
function crossings(value: (time: number) => number, length: number, way: 'up' | 'down' | 'both'): number[] {
  const found: number[] = [];
  for (let time = 0; time + step <= length; time += step) {
    const before = value(time);
    const after = value(time + step);
    if (before === 0 || before * after >= 0) continue;
    if (way !== 'both' && after > before !== (way === 'up')) continue;
    let low = time;
    let high = time + step;
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2;
      if (value(middle) * before > 0) low = middle;
      else high = middle;
    }
    found.push((low + high) / 2);
  }
  return found;
}

/**
 * Every event of the drawn swimmer, found in the drawn points alone. Toe: turning points of its height.
 * Hands: fingertip through the still surface (entry down, exit up), its forward speed changing sign (catch), its passing
 * under the shoulder, and its passing under the navel, taken three fifths of the way from shoulder to hip. Breath and
 * head in: the mouth, a hand's breadth below and before the ear, through the surface.
 */
export function trueEvents(
  body: (time: number) => BodyPoints,
  length: number,
  kind: 'butterfly' | 'kick',
): readonly TrueEvent[] {
  const h = 1e-4;
  const slope =
    (of: (points: BodyPoints) => number) =>
    (time: number): number =>
      (of(body(time + h)) - of(body(time - h))) / (2 * h);
  const toeRate = slope((points) => points.toe.y);
  const list = (event: EventKind, times: readonly number[]): TrueEvent[] =>
    times.map((time) => ({ kind: event, time }));
  const events = [
    ...list('kick-top', crossings(toeRate, length, 'down')),
    ...list('kick-bottom', crossings(toeRate, length, 'up')),
  ];
  if (kind === 'butterfly') {
    const under = (time: number): boolean => body(time).fingertip.y < body(time).shoulder.y;
    const navel = (points: BodyPoints): number =>
      points.shoulder.x + 0.6 * (points.hip.x - points.shoulder.x);
    const mouth = (points: BodyPoints): PoolXY => ({ x: points.ear.x + 0.06, y: points.ear.y - 0.09 });
    events.push(
      ...list(
        'entry',
        crossings((time) => body(time).fingertip.y, length, 'down'),
      ),
      ...list(
        'exit',
        crossings((time) => body(time).fingertip.y, length, 'up'),
      ),
      ...list(
        'catch',
        crossings(
          slope((points) => points.fingertip.x),
          length,
          'down',
        ).filter((time) => body(time).fingertip.y < 0),
      ),
      ...list(
        'shoulder',
        crossings((time) => body(time).fingertip.x - body(time).shoulder.x, length, 'down').filter(under),
      ),
      ...list(
        'navel',
        crossings((time) => body(time).fingertip.x - navel(body(time)), length, 'down').filter(under),
      ),
      ...list(
        'breath',
        crossings((time) => mouth(body(time)).y, length, 'up'),
      ),
      ...list(
        'head-in',
        crossings((time) => mouth(body(time)).y, length, 'down'),
      ),
    );
  }
  return events.sort((a, b) => a.time - b.time);
}
