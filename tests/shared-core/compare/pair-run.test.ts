import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cycleWarp } from '#core/compare/cycle-warp';
import {
  frameAtPlace,
  type PairSide,
  placeOfFrame,
  placeOfTime,
  sharedPlaces,
  timeAtPlace,
} from '#core/compare/pair-clock';
import { followFrame, pairRun } from '#core/compare/pair-run';

/** A clip whose gaps are given in ticks. */
function side(ticksPerSecond: number, gaps: readonly number[], slowdown = 1): PairSide {
  const starts: number[] = [];
  let tick = 0;
  for (const gap of gaps) {
    starts.push(tick);
    tick += gap;
  }
  return {
    clock: { table: { ticksPerSecond, starts, endTick: tick }, slowdown },
    first: 0,
    last: gaps.length - 1,
    lockTime: 0,
    cycleStarts: [],
  };
}

const gapsOf = (ticks: number) =>
  fc.array(fc.integer({ min: 1, max: 3 * ticks }), { minLength: 2, maxLength: 80 });
const anySide: fc.Arbitrary<PairSide> = fc
  .record({
    rate: fc.constantFrom(30, 600, 15_360, 30_000, 90_000, 120_000),
    slowdown: fc.constantFrom(1, 2, 4, 8, 8.008),
    lock: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .chain(({ rate, slowdown, lock }) =>
    gapsOf(Math.max(1, Math.round(rate / 60))).map((gaps) => {
      const made = side(rate, gaps, slowdown);
      const { table } = made.clock;
      return { ...made, lockTime: (lock * table.endTick) / table.ticksPerSecond / slowdown };
    }),
  );

/** The last start at or before a time, found the slow way. */
function lookedUp({ clock }: PairSide, time: number): number {
  const tick = time * clock.slowdown * clock.table.ticksPerSecond;
  const found = clock.table.starts.findLastIndex((start) => start <= tick + 0.005);
  return Math.max(0, found);
}

/** Whether a time is on a start or clearly off every one: in between, the clock's own slack decides. */
function isClear({ clock }: PairSide, time: number): boolean {
  const tick = time * clock.slowdown * clock.table.ticksPerSecond;
  return clock.table.starts.every((start) => {
    const off = Math.abs(start - tick);
    return off < 0.001 || off > 0.02;
  });
}

describe('cycles of one length', () => {
  it('counts cycles in whole numbers and goes on beyond them at the mean', () => {
    const warp = cycleWarp([1, 2, 4]);
    expect(warp?.toCycle(1)).toBe(0);
    expect(warp?.toCycle(3)).toBe(1.5);
    expect(warp?.toCycle(5.5)).toBe(3);
    expect(warp?.toCycle(-0.5)).toBe(-1);
    expect(warp?.toTime(0.5)).toBe(1.5);
  });

  it('reads back any time, and never runs backward', () => {
    const starts = fc
      .array(fc.double({ min: 0.01, max: 3, noNaN: true }), { minLength: 2, maxLength: 20 })
      .map((gaps) => {
        let time = 0;
        return gaps.map((gap) => {
          time += gap;
          return time;
        });
      });
    const time = fc.double({ min: -5, max: 60, noNaN: true });
    fc.assert(
      fc.property(starts, time, time, (list, a, b) => {
        const warp = cycleWarp(list);
        if (!warp) throw new Error('two starts make cycles');
        expect(Math.abs(warp.toTime(warp.toCycle(a)) - a)).toBeLessThan(1e-9);
        if (b - a > 1e-9) expect(warp.toCycle(a)).toBeLessThan(warp.toCycle(b));
      }),
    );
  });

  it('needs two different starts', () => {
    expect(cycleWarp([])).toBeNull();
    expect(cycleWarp([2])).toBeNull();
    expect(cycleWarp([2, 2])).toBeNull();
  });
});

describe('two swims locked together', () => {
  it('finds every frame again from its own place', () => {
    fc.assert(
      fc.property(anySide, fc.nat(), (one, pick) => {
        const frame = pick % (one.last + 1);
        expect(frameAtPlace(one, 'time', placeOfFrame(one, 'time', frame))).toBe(frame);
      }),
    );
  });

  it('shows in the other the last frame that has begun, whichever is stepped', () => {
    fc.assert(
      fc.property(anySide, anySide, fc.nat(), fc.boolean(), (a, b, pick, second) => {
        const lead = second ? 1 : 0;
        const sides = [a, b];
        const moved = sides[lead] ?? a;
        const other = sides[1 - lead] ?? b;
        const frame = pick % (moved.last + 1);
        const frames = followFrame(sides, 'time', { frames: [frame, frame], lead });
        expect(frames[lead]).toBe(frame);
        const time = placeOfFrame(moved, 'time', frame) + other.lockTime;
        fc.pre(isClear(other, time));
        expect(frames[1 - lead]).toBe(lookedUp(other, time));
      }),
    );
  });

  it('does not show a picture of a coarse clock before its time', () => {
    // 30 ticks a second, one a picture: half a tick early would be half a picture early
    const coarse = side(
      30,
      Array.from({ length: 30 }, () => 1),
    );
    const fine = side(
      240,
      Array.from({ length: 240 }, () => 1),
    );
    // 7 of 240 s is before the start of the second picture at 8 of 240 s
    expect(followFrame([fine, coarse], 'time', { frames: [7, 0], lead: 0 })).toEqual([7, 0]);
    expect(followFrame([fine, coarse], 'time', { frames: [8, 0], lead: 0 })).toEqual([8, 1]);
  });

  it('stays within one picture after ten minutes of stepping, at 60/s and uneven 119.88/s', () => {
    const a = side(
      15_360,
      Array.from({ length: 36_000 }, () => 256),
    );
    const b = side(
      120_000,
      Array.from({ length: 71_928 }, (_, n) => 1001 + 300 * ((n % 7) - 3)),
    );
    let frames: readonly number[] = [0, 0];
    for (let step = 0; step < 35_999; step++) {
      frames = followFrame([a, b], 'time', { frames: [(frames[0] ?? 0) + 1, frames[1] ?? 0], lead: 0 });
      const time = (frames[0] ?? 0) / 60;
      const from = (b.clock.table.starts[frames[1] ?? 0] ?? 0) / 120_000;
      const to = (b.clock.table.starts[(frames[1] ?? 0) + 1] ?? b.clock.table.endTick) / 120_000;
      if (!(from <= time + 1e-7 && time < to + 1e-7)) throw new Error(`apart at ${time} s`);
    }
    expect(frames[0]).toBe(35_999);
  });

  it('meets at the lock in both ways of counting, and at every later cycle in percent', () => {
    const even = Array.from({ length: 600 }, () => 256);
    const a = { ...side(15_360, even), lockTime: 1.2, cycleStarts: [0, 1.2, 2.2, 3.4, 4.6] };
    const b = { ...side(15_360, even), lockTime: 2, cycleStarts: [0.5, 2, 3.1, 4.7] };
    for (const mode of ['time', 'cycle'] as const) {
      expect(placeOfTime(a, mode, a.lockTime)).toBe(0);
      expect(timeAtPlace(b, mode, placeOfTime(a, mode, 1.2))).toBeCloseTo(2, 12);
    }
    expect(timeAtPlace(b, 'cycle', placeOfTime(a, 'cycle', 2.2))).toBeCloseTo(3.1, 12);
    expect(timeAtPlace(b, 'cycle', placeOfTime(a, 'cycle', 2.8))).toBeCloseTo(3.9, 12);
    expect(timeAtPlace(b, 'time', placeOfTime(a, 'time', 2.8))).toBeCloseTo(3.6, 12);
  });

  it('holds a swim at the ends of its stretch while the other goes on', () => {
    const even = Array.from({ length: 100 }, () => 1);
    const a = { ...side(50, even), first: 10, last: 40 };
    const b = { ...side(50, even), first: 0, last: 99 };
    expect(followFrame([a, b], 'time', { frames: [0, 80], lead: 1 })).toEqual([40, 80]);
    expect(followFrame([a, b], 'time', { frames: [5, 80], lead: 0 })).toEqual([10, 10]);
    expect(sharedPlaces([a, b], 'time')).toEqual({ from: 0.2, to: 0.8 });
    expect(sharedPlaces([a, { ...b, lockTime: 3 }], 'time')).toBeNull();
  });

  it('leaves the other where it is when free', () => {
    const even = Array.from({ length: 100 }, () => 1);
    const sides = [side(50, even), side(50, even)];
    expect(followFrame(sides, 'free', { frames: [30, 77], lead: 0 })).toEqual([30, 77]);
  });
});

describe('a run', () => {
  it('is the same however it is cut into looks, and ends with the longer swim', () => {
    fc.assert(
      fc.property(anySide, anySide, fc.double({ min: 0, max: 3, noNaN: true }), (a, b, seconds) => {
        const run = pairRun([a, b], 'time', { frames: [0, 0], lead: 0 });
        const [first, second] = run.framesAt(seconds);
        const time = seconds;
        fc.pre(isClear(a, time) && isClear(b, time - a.lockTime + b.lockTime));
        expect(first).toBe(lookedUp(a, time));
        expect(second).toBe(lookedUp(b, time - a.lockTime + b.lockTime));
        expect(run.framesAt(run.seconds)).toContain(
          placeOfFrame(a, 'time', a.last) >= placeOfFrame(b, 'time', b.last) ? a.last : b.last,
        );
      }),
    );
  });

  it('runs both in true time from where they stand when free', () => {
    const a = side(
      60,
      Array.from({ length: 120 }, () => 1),
    );
    const b = side(
      240,
      Array.from({ length: 240 }, () => 1),
    );
    const run = pairRun([a, b], 'free', { frames: [30, 48], lead: 1 });
    expect(run.framesAt(0)).toEqual([30, 48]);
    expect(run.framesAt(0.5)).toEqual([60, 168]);
    expect(run.seconds).toBeCloseTo(89 / 60, 12);
  });

  it('of one swim alone is its own true time', () => {
    const a = side(
      60,
      Array.from({ length: 120 }, () => 1),
      2,
    );
    const run = pairRun([a], 'time', { frames: [30], lead: 0 });
    expect(run.framesAt(0.25)).toEqual([60]);
  });
});
