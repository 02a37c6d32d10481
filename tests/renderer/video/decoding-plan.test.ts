import { describe, expect, it } from 'vitest';
import { orderPictures } from '#core/timeline/picture-order';
import { comesFrom, holdingRange, nextFrameToDecode } from '../../../renderer/video/decoding-plan';

/** A clip of 200 frames in groups of 50, coded in showing order. */
const order = orderPictures(
  Array.from({ length: 200 }, (_, n) => ({ tick: n * 10, durationTicks: 10, key: n % 50 === 0 })),
  1000,
);
const holding = (from: number, to: number) => (frame: number) => frame >= from && frame <= to;

describe('holding range', () => {
  it('lies mostly ahead of the walk, and holds no more than there is room for', () => {
    expect(holdingRange({ playhead: 100, towards: 1 }, 41, 200)).toEqual({ first: 90, last: 130 });
    expect(holdingRange({ playhead: 100, towards: -1 }, 41, 200)).toEqual({ first: 70, last: 110 });
  });

  it('gives the room behind an end of the clip to the other side', () => {
    expect(holdingRange({ playhead: 195, towards: 1 }, 41, 200)).toEqual({ first: 159, last: 199 });
    expect(holdingRange({ playhead: 2, towards: -1 }, 41, 200)).toEqual({ first: 0, last: 40 });
  });

  it('stays narrow after a jump and inside the clip', () => {
    expect(holdingRange({ playhead: 100, towards: 0 }, 500, 200)).toEqual({ first: 76, last: 148 });
    expect(holdingRange({ playhead: 0, towards: 0 }, 500, 200)).toEqual({ first: 0, last: 48 });
    expect(holdingRange({ playhead: 0, towards: 0 }, 1, 1)).toEqual({ first: 0, last: 0 });
  });
});

describe('what to decode next', () => {
  const walk = (playhead: number, towards: -1 | 0 | 1) => {
    const at = { playhead, towards };
    return { at, range: holdingRange(at, 41, 200) };
  };

  it('is first of all the frame asked for', () => {
    const { at, range } = walk(100, -1);
    expect(nextFrameToDecode(at, range, order, null, holding(101, 110))).toBe(100);
  });

  it('goes on ahead of a forward walk as long as the decoder only has to be fed', () => {
    const { at, range } = walk(100, 1);
    const run = { start: 100, next: 128 };
    expect(nextFrameToDecode(at, range, order, run, holding(90, 127))).toBe(128);
    expect(nextFrameToDecode(at, range, order, run, holding(90, 130))).toBeNull();
  });

  it('fetches ahead of a backward walk once half of what lies ahead is used up', () => {
    const { at, range } = walk(100, -1);
    // 30 lie ahead when full: at 16 left it waits, at 14 left it begins
    expect(nextFrameToDecode(at, range, order, null, holding(84, 110))).toBeNull();
    expect(nextFrameToDecode(at, range, order, null, holding(86, 110))).toBe(85);
  });

  it('begins the earlier group when a forward walk starts close above its edge', () => {
    const { at, range } = walk(102, 1);
    expect(nextFrameToDecode(at, range, order, null, holding(100, 132))).toBe(99);
  });
});

describe('what a run still gives', () => {
  it('is what lies ahead in its own group or close by, not what it has passed', () => {
    const run = { start: 50, next: 60 };
    expect(comesFrom(run, order, 75)).toBe(true);
    expect(comesFrom(run, order, 59)).toBe(false);
    expect(comesFrom(run, order, 20)).toBe(false);
    expect(comesFrom(null, order, 75)).toBe(false);
  });

  it('does not count a later group that is reached sooner from its own key picture', () => {
    expect(comesFrom({ start: 50, next: 60 }, order, 120)).toBe(false);
    expect(comesFrom({ start: 50, next: 98 }, order, 120)).toBe(true);
  });
});
