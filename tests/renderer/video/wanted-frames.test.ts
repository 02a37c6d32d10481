import { describe, expect, it } from 'vitest';
import { orderPictures } from '#core/timeline/picture-order';
import type { HoldPlan } from '../../../renderer/video/hold-plan';
import {
  afterLookingEvent,
  justOpened,
  type Looking,
  type LookingEvent,
} from '../../../renderer/video/looking-machine';
import { isNeededNow, isWanted, nextWanted, type Wanting } from '../../../renderer/video/wanted-frames';

/** A hundred frames in groups of ten, none out of order. */
const order = orderPictures(
  Array.from({ length: 100 }, (_, n) => ({ tick: n * 100, durationTicks: 100, key: n % 10 === 0 })),
  5000,
  Number.POSITIVE_INFINITY,
);
const plan: HoldPlan = {
  range: { first: 30, last: 70 },
  whole: { first: 45, last: 55 },
  eagerAhead: 20,
  around: { first: 40, last: 60 },
};
const reached = (...events: readonly LookingEvent[]): Looking => events.reduce(afterLookingEvent, justOpened);
const asked = (half: boolean, isHere: boolean, towards: 0 | 1 = 0): LookingEvent => ({
  kind: 'asked',
  walk: { playhead: 50, towards },
  half,
  isHere,
});
const wanting = (looking: Looking, held: readonly number[], whole: readonly number[] = []): Wanting => ({
  looking,
  plan,
  isMissing: (frame) => !held.includes(frame) && !whole.includes(frame),
  lacksWhole: (frame) => !whole.includes(frame),
});
const next = (of: Wanting, now = 0, comes: readonly number[] = []): number | null =>
  nextWanted(of, order, null, (frame) => comes.includes(frame), now);
const all = Array.from({ length: 100 }, (_, n) => n);

describe('the frame to decode next', () => {
  it('is the one waited for, before all else', () => {
    expect(next(wanting(reached(asked(true, false)), []))).toBe(50);
    expect(next(wanting(reached(asked(true, false)), []), 0, [50])).not.toBe(50);
  });

  it('waits a moment after a jump, until the coach goes on or stops', () => {
    const jumped = reached(asked(true, false), { kind: 'arrived', quietUntil: 40 }, { kind: 'answered' });
    expect(next(wanting(jumped, [50]), 39)).toBeNull();
    expect(next(wanting(jumped, [50]), 41)).not.toBeNull();
    expect(next(wanting(afterLookingEvent(jumped, { kind: 'stopped' }), [50]), 39)).not.toBeNull();
    expect(next(wanting(afterLookingEvent(jumped, asked(true, true, 1)), [50]), 39)).not.toBeNull();
  });

  it('is the whole picture where the coach stops, then what is near, then whole pictures around', () => {
    const still = reached(asked(true, true), { kind: 'stopped' });
    expect(next(wanting(still, all))).toBe(50);
    expect(next(wanting(still, [], [50]))).toBe(51);
    const around = next(wanting(still, all, [50]));
    expect(around).not.toBeNull();
    expect(plan.whole.first <= (around ?? 0) && (around ?? 0) <= plan.whole.last).toBe(true);
    expect(next(wanting(still, [], all))).toBeNull();
  });

  it('is none while moving where half size is held', () => {
    expect(next(wanting(reached(asked(true, true)), all))).toBeNull();
    expect(next(wanting(reached(asked(false, true)), all, [50]))).not.toBeNull();
  });
});

describe('a picture that comes out of the decoder', () => {
  const still = reached(asked(true, true), { kind: 'stopped' });
  it('is copied inside the range where it is missing, and whole only where the coach stopped', () => {
    expect(isWanted(wanting(reached(asked(true, true)), []), 70)).toBe(true);
    expect(isWanted(wanting(reached(asked(true, true)), []), 71)).toBe(false);
    expect(isWanted(wanting(reached(asked(true, true)), all), 52)).toBe(false);
    expect(isWanted(wanting(still, all), 52)).toBe(true);
    expect(isWanted(wanting(still, all), 56)).toBe(false);
  });

  it('is worth emptying the decoder for only up to the frame looked at', () => {
    expect(isNeededNow(wanting(reached(asked(true, false)), []), 50)).toBe(true);
    expect(isNeededNow(wanting(reached(asked(true, false)), []), 51)).toBe(false);
    expect(isNeededNow(wanting(reached(asked(true, false)), []), 29)).toBe(false);
    expect(isNeededNow(wanting(still, all), 45)).toBe(true);
    expect(isNeededNow(wanting(still, all), 44)).toBe(false);
  });
});
