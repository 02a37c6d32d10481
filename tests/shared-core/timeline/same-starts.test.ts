import { describe, expect, it } from 'vitest';
import { sameStarts } from '#core/timeline/same-starts';

const table = (ticksPerSecond: number, ...starts: number[]) => ({
  ticksPerSecond,
  starts,
  endTick: (starts.at(-1) ?? 0) + 1,
});

describe('same starts', () => {
  it('holds between clocks: thirtieths in ticks and rounded to milliseconds', () => {
    const ticks = table(90_000, 126_000, 129_000, 132_000, 135_000);
    expect(sameStarts(ticks, table(1000, 0, 33, 67, 100))).toBe(true);
    expect(sameStarts(table(1000, 0, 33, 67, 100), ticks)).toBe(true);
  });

  it('fails when a picture is missing, moved, or one more', () => {
    const even = table(1000, 0, 33, 67, 100);
    expect(sameStarts(even, table(1000, 0, 33, 67))).toBe(false);
    expect(sameStarts(even, table(1000, 0, 33, 69, 100))).toBe(false);
    expect(sameStarts(even, table(1000, 0, 33, 67, 100, 133))).toBe(false);
  });

  it('holds for a table and itself, also empty', () => {
    expect(sameStarts(table(1000), table(25))).toBe(true);
    const one = table(15_360, 512, 1024, 9000);
    expect(sameStarts(one, one)).toBe(true);
  });
});
