import { describe, expect, it } from 'vitest';
import { reorderDepthOfLevel, reorderDepthOfTimes, withReorderDepth } from '#core/timeline/avc-reordering';
import { readSequenceSet } from '#core/timeline/avc-sequence-set';

const bytes = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

// 320 × 240 at level 1.3 by libx264 0.164 through ffmpeg 5.1, which says how frames are put in order; and one of 320 × 192
// at level 3 with a clock that does not
const says = bytes('6764000dacd94141fb011000000300100000030320f1429960');
const silent = bytes('674d001ee560a18a100000030010000003032840');

describe('how many frames of H.264 are put in order', () => {
  it('is what the level lets a decoder hold where the stream does not say: table A-1', () => {
    const of = (level: number, macroblocks: number, more = {}) => {
      const set = readSequenceSet(silent);
      if (!set) throw new Error('no set');
      return reorderDepthOfLevel({ ...set, level, macroblocks, ...more });
    };
    // 1080p at level 4 and 4.2, 720p at 3.1, 2160p at 5.1: values known from the standard's own examples and encoders
    expect([of(40, 8160), of(42, 8160), of(31, 3600), of(51, 32_400)]).toEqual([4, 4, 5, 5]);
    expect(of(30, 99)).toBe(16);
    expect(of(40, 8160, { orderType: 2 })).toBe(0);
    expect(of(40, 8160, { profile: 100, constraints: 0x10 })).toBe(0);
  });

  it('is how many are decoded before one that is shown earlier', () => {
    expect(reorderDepthOfTimes([0, 1, 2, 3])).toBe(0);
    expect(reorderDepthOfTimes([0, 3, 1, 2, 6, 4, 5])).toBe(1);
    expect(reorderDepthOfTimes([0, 8, 4, 2, 1, 3, 6, 5, 7])).toBe(3);
    expect(reorderDepthOfTimes([])).toBe(0);
  });

  it('is written into a set that does not say it, once, and changes nothing else', () => {
    const told = withReorderDepth(silent, 3);
    expect(told).not.toEqual(silent);
    expect(readSequenceSet(told)).toEqual(readSequenceSet(silent));
    expect(withReorderDepth(told, 5)).toEqual(told);
    expect(withReorderDepth(says, 3)).toEqual(says);
    // a unit of another kind, and nothing at all
    expect(withReorderDepth(Uint8Array.of(0x68, 1, 2), 3)).toEqual(Uint8Array.of(0x68, 1, 2));
    expect(withReorderDepth(new Uint8Array(), 3)).toEqual(new Uint8Array());
  });
});
