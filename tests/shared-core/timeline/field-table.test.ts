import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldTable } from '#core/timeline/field-table';

describe('the table of an interlaced film, field by field', () => {
  it('makes 50 frames a second of 25 pictures', () => {
    expect(fieldTable({ ticksPerSecond: 25, starts: [3, 4, 5], endTick: 6 })).toEqual({
      ticksPerSecond: 50,
      starts: [6, 7, 8, 9, 10, 11],
      endTick: 12,
    });
  });

  it('halves a single picture, and leaves an empty table empty', () => {
    expect(fieldTable({ ticksPerSecond: 90, starts: [90], endTick: 93 }).starts).toEqual([180, 183]);
    expect(fieldTable({ ticksPerSecond: 90, starts: [], endTick: 0 }).starts).toEqual([]);
  });

  it('starts each first field with its picture and each second one half-way to the next, whatever the gaps', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 9000 }), { minLength: 2, maxLength: 60 }), (gaps) => {
        const starts = gaps.map((_, n) => gaps.slice(0, n).reduce((sum, gap) => sum + gap, 0));
        const table = fieldTable({ ticksPerSecond: 90_000, starts, endTick: 0 });
        expect(table.starts).toHaveLength(2 * starts.length);
        starts.forEach((start, n) => {
          expect((table.starts[2 * n] ?? 0) / table.ticksPerSecond).toBe(start / 90_000);
          const next = starts[n + 1];
          if (next !== undefined) expect(table.starts[2 * n + 1]).toBe(start + next);
        });
      }),
    );
  });
});
