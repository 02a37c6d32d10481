import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kickDoubt } from '#core/measures/kick-doubt';

describe('doubt about a kick frequency', () => {
  it('names the slowdown that makes a kick of 240/s film read as true-speed plausible', () => {
    // 2.1 Hz filmed at 240, stored at 30, taken as true speed
    expect(kickDoubt(2.1 / 8, 1)).toEqual({ hz: 0.2625, tooSlow: true, better: { slowdown: 8, hz: 2.1 } });
    // and the other way round: true-speed film taken as eight times slower
    expect(kickDoubt(16, 8)).toEqual({ hz: 16, tooSlow: false, better: { slowdown: 1, hz: 2 } });
  });

  it('is silent from 0.5 to 4 Hz, both ends included, and for what is no frequency', () => {
    for (const hz of [0.5, 1, 4, 0, -1, Number.NaN]) expect(kickDoubt(hz, 1)).toBeNull();
    expect(kickDoubt(0.499, 1)).not.toBeNull();
    expect(kickDoubt(4.001, 1)).not.toBeNull();
  });

  it('names no slowdown when none fits', () => {
    expect(kickDoubt(0.001, 1)?.better).toBeNull();
  });

  it('names only slowdowns with which no doubt is left', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.constantFrom(1, 2, 4, 8), (hz, now) => {
        const better = kickDoubt(hz, now)?.better;
        if (better) expect(kickDoubt(better.hz, better.slowdown)).toBeNull();
      }),
    );
  });
});
