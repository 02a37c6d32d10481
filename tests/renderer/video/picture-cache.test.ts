import { describe, expect, it } from 'vitest';
import type { HeldPicture } from '../../../renderer/video/held-picture';
import { createPictureCache } from '../../../renderer/video/picture-cache';

function picture(frame: number, released: number[]): HeldPicture {
  return {
    frame,
    width: 1,
    height: 1,
    whole: true,
    canHalve: false,
    light: null,
    halved: () => null,
    bytes: 10,
    draw: () => undefined,
    colours: () => new Uint16Array(),
    smallGrey: (step) => ({ step, width: 1, height: 1, grey: new Uint8Array(1) }),
    release: () => released.push(frame),
  };
}

describe('picture cache', () => {
  it('never holds more than its budget, and lets the farthest outside the range go first', () => {
    const released: number[] = [];
    let budget = 30;
    const cache = createPictureCache(() => budget);
    const range = { first: 5, last: 7 };
    for (const frame of [1, 9, 5, 6, 7]) {
      cache.put(picture(frame, released), 6, range);
      expect(cache.bytes).toBeLessThanOrEqual(30);
    }
    expect(released).toEqual([1, 9]);
    expect([5, 6, 7].every((frame) => cache.has(frame))).toBe(true);
    budget = 10;
    cache.shrink(6, range, range);
    expect([cache.bytes, cache.has(6), released.length]).toEqual([10, true, 4]);
  });

  it('keeps the picture of the playhead whatever the budget', () => {
    const cache = createPictureCache(() => 5);
    cache.put(picture(3, []), 3, { first: 3, last: 3 });
    expect(cache.get(3)?.frame).toBe(3);
  });

  it('releases a picture that is replaced, and all when cleared', () => {
    const released: number[] = [];
    const cache = createPictureCache(() => 100);
    cache.put(picture(1, released), 1, { first: 0, last: 9 });
    cache.put(picture(1, released), 1, { first: 0, last: 9 });
    expect(cache.bytes).toBe(10);
    cache.clear();
    expect(released).toEqual([1, 1]);
    expect([cache.bytes, cache.count]).toEqual([0, 0]);
  });
});
