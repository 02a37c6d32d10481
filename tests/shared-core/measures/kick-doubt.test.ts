import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handoutReading } from '#core/handout/handout-reading';
import { catalogue } from '#core/measures/families';
import { kickDoubt } from '#core/measures/kick-doubt';
import { swimDoubtWords } from '#core/measures/kick-doubt-words';
import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';

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

describe('a swim whose kick frequency is doubted', () => {
  const kick = (hz: number): Reading => ({
    id: 'kick-frequency',
    status: 'computed',
    value: hz,
    unit: 'Hz',
    interval: { low: hz - 0.1, high: hz + 0.1, question: 'this-swim' },
    otherInterval: null,
    sharedVariance: 0,
    ownVariance: 0.0025,
    followed: 0,
    perCycle: [],
    singles: null,
    cycles: 8,
    from: { eventIds: [], postureFrames: [], sceneItems: [] },
    notes: hz < 0.5 || hz > 4 ? ['implausible-for-a-human'] : [],
    doubts: [],
  });

  it('says so in words, with the slow motion that would explain it', () => {
    expect(swimDoubtWords([kick(16)], 8)).toBe(
      'These times can’t be right. Kick frequency reads 16 Hz; a person kicks 0.5 to 4 times a second. Was this filmed in true speed? At true speed it reads 2 Hz.',
    );
    expect(swimDoubtWords([kick(2)], 8)).toBeNull();
    expect(swimDoubtWords([], 8)).toBeNull();
  });

  it('never holds a doubtful kick against a target on the handout', () => {
    const definition = catalogue.find(({ id }) => id === 'kick-frequency');
    if (!definition) throw new Error('no kick frequency in the catalogue');
    const target = { reading: 'kick-frequency', low: 2, high: 2.5, from: null };
    const swimmer = { targets: [target] } as unknown as Swimmer;
    expect(handoutReading(definition, kick(16), swimmer)).toMatchObject({
      word: 'Doubtful',
      target: '',
      bar: null,
    });
    expect(handoutReading(definition, kick(2.2), swimmer).word).toBe('On target');
  });
});
