import { describe, expect, it } from 'vitest';
import { sameStarts } from '#core/timeline/same-starts';
import { whatIsSaid } from '../../../renderer/open-swim/marking';
import { whereWords } from '../../../renderer/film/where-words';
import { framesWithMarks, nextOf } from '../../../renderer/open-swim/selectors';
import { aSwim } from '../a-swim';

const { card } = aSwim();

describe('what a mark needs to be told', () => {
  it('is nothing in the full stroke', () => {
    expect(whatIsSaid('entry', card)).toEqual({ hand: null, breathTo: null, metres: null });
    expect(whatIsSaid('breath', card)).toMatchObject({ breathTo: 'front' });
  });

  it('is the hand only when the drill leaves it open', () => {
    expect(whatIsSaid('entry', { ...card, arms: 'one-arm-left' })).toMatchObject({ hand: 'left' });
    expect(whatIsSaid('entry', { ...card, arms: 'one-arm-alternating' })).toBe('hand');
    expect(whatIsSaid('kick-top', { ...card, arms: 'one-arm-alternating' })).toMatchObject({ hand: null });
  });

  it('is the side of the breath in one-arm and side drills, and the metres of a distance mark', () => {
    expect(whatIsSaid('breath', { ...card, sideUp: 'left-side' })).toBe('breath');
    expect(whatIsSaid('distance-mark', card)).toBe('metres');
  });
});

describe('where the film stands', () => {
  const clock = {
    table: { ticksPerSecond: 50, starts: Array.from({ length: 200 }, (_, n) => n), endTick: 200 },
    slowdown: 1,
  };
  const rhythm = { strokes: [], cycleStarts: [1, 2] };

  it('counts frames from one for people and says the share of the stroke', () => {
    expect(whereWords(clock, 69, rhythm, 'stroke')).toEqual({
      frame: 'frame 70 of 200',
      time: '1.380 s · 38 % of stroke 1',
    });
    expect(whereWords(clock, 10, rhythm, 'stroke').time).toBe('0.200 s');
  });

  it('jumps to the nearest marked frame on either side', () => {
    const frames = framesWithMarks(aSwim());
    expect(frames).toEqual([20, 32]);
    expect(nextOf(frames, 20, 1)).toBe(32);
    expect(nextOf(frames, 20, -1)).toBeNull();
  });
});

describe('whether a film is the one that was marked', () => {
  const table = (ticksPerSecond: number, starts: readonly number[]) => ({
    ticksPerSecond,
    starts,
    endTick: 0,
  });

  it('holds when only the clock’s fineness differs', () => {
    expect(sameStarts(table(50, [0, 1, 2]), table(1000, [40, 60, 80]), 0.5)).toBe(true);
  });

  it('fails on a frame more, less or elsewhere', () => {
    expect(sameStarts(table(50, [0, 1, 2]), table(50, [0, 1]), 0.5)).toBe(false);
    expect(sameStarts(table(1000, [0, 20, 40]), table(1000, [0, 25, 40]), 0.5)).toBe(false);
  });
});
