import { describe, expect, it } from 'vitest';
import { readingContext } from '#core/measures/compute-readings';
import { overlaidCycles } from '#core/measures/events/overlaid-cycles';
import { aMark, aSwim } from '#tests/renderer/a-swim';

/** Two strokes of 1 s and 1.2 s at 100 a second; the second breathes and its hands catch later. */
const swim = aSwim({
  clip: { ...aSwim().clip, frameTimes: { ticksPerSecond: 100, firstTick: 0, gaps: [[1, 400]] } },
  events: [
    aMark('t0', 'kick-top', 95),
    aMark('e1', 'entry', 100),
    aMark('b0', 'kick-bottom', 120),
    aMark('c1', 'catch', 130),
    aMark('s1', 'shoulder', 150),
    aMark('t1', 'kick-top', 152),
    aMark('x1', 'exit', 175),
    aMark('b1', 'kick-bottom', 172),
    aMark('t2', 'kick-top', 200),
    aMark('e2', 'entry', 200),
    aMark('b2', 'kick-bottom', 224),
    aMark('c2', 'catch', 242),
    aMark('breath', 'breath', 250),
    aMark('s2', 'shoulder', 260),
    aMark('t3', 'kick-top', 260),
    aMark('b3', 'kick-bottom', 284),
    aMark('x2', 'exit', 290),
    aMark('t4', 'kick-top', 320),
    aMark('e3', 'entry', 320),
  ],
});
const { events } = readingContext(swim, { swimmer: null, markingError: null });

describe('strokes over one another', () => {
  it('lay each mark at its percent of its own stroke, with mean and standard deviation', () => {
    const { of, cycles, moments } = overlaidCycles(events);
    expect([of, cycles]).toEqual(['stroke', 2]);
    const caught = moments.find(({ kind }) => kind === 'catch');
    // by hand: 30 of 100 frames, 42 of 120: 30 % and 35 %
    expect(caught?.marks.map(({ percent }) => percent)).toEqual([
      expect.closeTo(30, 9),
      expect.closeTo(35, 9),
    ]);
    expect(caught?.mean).toBeCloseTo(32.5, 9);
    expect(caught?.sd).toBeCloseTo(5 / Math.SQRT2, 9);
    const first = moments.find(({ kind, kick }) => kind === 'kick-top' && kick === 1);
    expect(first?.marks.map(({ percent }) => percent)).toEqual([expect.closeTo(-5, 9), expect.closeTo(0, 9)]);
  });

  it('give the four gaps as leg minus hand, like the readings of the same names', () => {
    const gaps = overlaidCycles(events).gaps;
    // by hand: T1 −50 and 0 ms, T2 −100 and −180 ms, T3 20 and 0 ms, T4 −30 and −60 ms
    expect(gaps.map(({ id, milliseconds }) => [id, Math.round(milliseconds.mean)])).toEqual([
      ['gap-t1', -25],
      ['gap-t2', -140],
      ['gap-t3', 10],
      ['gap-t4', -45],
    ]);
    expect(gaps[0]?.percent.mean).toBeCloseTo(-2.5, 9);
    expect(gaps[1]?.milliseconds.sd).toBeCloseTo(80 / Math.SQRT2, 6);
  });

  it('keep breathing strokes apart from the others when asked', () => {
    const breathing = overlaidCycles(events, 'breathing');
    expect(breathing.cycles).toBe(1);
    expect(breathing.moments.find(({ kind }) => kind === 'catch')).toMatchObject({ sd: null });
    expect(breathing.moments.some(({ kind }) => kind === 'breath')).toBe(true);
    expect(overlaidCycles(events, 'not-breathing').moments.some(({ kind }) => kind === 'breath')).toBe(false);
  });

  it('are kicks where there are no strokes, and nothing where there is nothing', () => {
    const kicks = events.filter(({ event }) => event.kind.startsWith('kick'));
    const laid = overlaidCycles(kicks);
    expect(laid.of).toBe('kick');
    expect(
      laid.moments.find(({ kind }) => kind === 'kick-top')?.marks.every(({ percent }) => percent === 0),
    ).toBe(true);
    expect(overlaidCycles([])).toEqual({ of: 'kick', cycles: 0, moments: [], gaps: [] });
  });
});
