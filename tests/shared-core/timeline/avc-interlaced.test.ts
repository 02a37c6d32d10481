import { describe, expect, it } from 'vitest';
import { mayBeInterlacedAvc } from '#core/timeline/avc-interlaced';

const bytes = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

// written by libx264 0.164 through ffmpeg 5.1 (testsrc2 320 × 240): plain, with "-flags +ilme+ildct", baseline
const progressive =
  '0164000dffe100196764000dacd94141fb011000000300100000030320f142996001000668ebe3cb22c0fdf8f800';
const interlaced =
  '01640015ffe1001a67640015acd941410fcb808800000300080000030190f8a14cb001000668fba3cb22c0fdf8f800';
const baseline = '0142c00dffe100186742c00dd90141fb011000000300100000030320f142a48001000568cb83cb20';
const interlacedWithStartCodes =
  '0000000109f00000000167640015acd941410fcb808800000300080000030190f8a14cb00000000168fba3cb22c0';

describe('whether H.264 may be interlaced', () => {
  it('is read from the sequence parameter set, in a record or between start codes', () => {
    expect(mayBeInterlacedAvc(bytes(progressive))).toBe(false);
    expect(mayBeInterlacedAvc(bytes(baseline))).toBe(false);
    expect(mayBeInterlacedAvc(bytes(interlaced))).toBe(true);
    expect(mayBeInterlacedAvc(bytes(interlacedWithStartCodes))).toBe(true);
  });

  it('is no where there is nothing whole to read', () => {
    expect(mayBeInterlacedAvc(new Uint8Array())).toBe(false);
    expect(mayBeInterlacedAvc(bytes(interlaced).subarray(0, 13))).toBe(false);
    expect(mayBeInterlacedAvc(new Uint8Array(64).fill(0xff))).toBe(false);
  });
});
