import { describe, expect, it } from 'vitest';
import type { Swim } from '#core/swim-file/swim-schema';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import { remarkingEntries } from '#core/uncertainty/remarking-entries';
import { type MomentItem, remarkable, remarkingPlan } from '#core/uncertainty/remarking-plan';
import { aMark, aSwim } from '#tests/renderer/a-swim';

const everything = { moments: 1000, bodyLines: 1000, followed: 1000 };
/** Ten seconds at 50 a second, a kick every 0.4 s, an entry every 1.2 s, a rare breath, body lines and a followed toe. */
const swim: Swim = aSwim({
  clip: { ...aSwim().clip, frameTimes: { ticksPerSecond: 50, firstTick: 0, gaps: [[1, 500]] } },
  events: [
    ...Array.from({ length: 24 }, (_, i) => aMark(`t${i}`, 'kick-top', 5 + 20 * i)),
    ...Array.from({ length: 8 }, (_, i) => aMark(`e${i}`, 'entry', 6 + 60 * i)),
    aMark('breath', 'breath', 250),
    { ...aMark('proposed', 'exit', 300), refined: { frames: 0.3, sdSeconds: 0.004 } },
  ],
  postures: [100, 101].map((frame) => ({
    frame,
    points: { hip: { x: 10, y: 20 }, toe: { x: 1, y: 2 } },
    hidden: ['knee'],
  })),
  followed: [
    { landmark: 'toe', frame: 95, points: Array.from({ length: 30 }, (_, i) => [i, 2 * i, 0.9] as const) },
  ].map((run) => ({ ...run, landmark: 'toe' as const, points: run.points.map(([x, y, c]) => [x, y, c]) })),
});
const clock = { table: tableFromRecord(swim.clip.frameTimes), slowdown: 1 };
const momentsOf = (seed: number): MomentItem[] =>
  remarkingPlan(swim, clock, { ...everything, seed }).flatMap((each) => (each.of === 'event' ? [each] : []));

describe('the plan of what is marked again', () => {
  it('holds one mark of its kind in every loop, and the loop holds the mark', () => {
    for (const seed of [1, 2, 3])
      for (const { kind, frame, first, last } of momentsOf(seed)) {
        const inside = swim.events.filter(
          (each) => each.kind === kind && each.frame >= first && each.frame <= last,
        );
        expect(inside.map((each) => each.frame)).toEqual([frame]);
        expect(last).toBeLessThan(500);
      }
  });

  it('does not let start, middle or end of a loop tell where the mark was', () => {
    // over many seeds the free-standing breath lies anywhere from a tenth to nine tenths of its loop
    const shares = Array.from({ length: 200 }, (_, seed) => {
      const item = momentsOf(seed).find(({ kind }) => kind === 'breath');
      return item ? (item.frame - item.first) / (item.last - item.first) : Number.NaN;
    });
    expect(Math.min(...shares)).toBeLessThan(0.28);
    expect(Math.max(...shares)).toBeGreaterThan(0.72);
    const starts = new Set(
      Array.from({ length: 200 }, (_, seed) => {
        const item = momentsOf(seed).find(({ kind }) => kind === 'breath');
        return item && item.frame - item.first;
      }),
    );
    expect(starts.size).toBeGreaterThan(8);
  });

  it('is the same for the same seed, another for another, and gives rare kinds their turn', () => {
    const few = (seed: number) => remarkingPlan(swim, clock, { moments: 6, bodyLines: 0, followed: 0, seed });
    expect(few(4)).toEqual(few(4));
    expect(few(4)).not.toEqual(few(5));
    for (const seed of [1, 2, 3, 4, 5])
      expect(few(seed).filter((each) => each.of === 'event' && each.kind === 'breath')).toHaveLength(1);
  });

  it('leaves out what the coach did not mark with the eye, and followed points beside marked ones', () => {
    const plan = remarkingPlan(swim, clock, { ...everything, seed: 9 });
    expect(plan.some((each) => each.of === 'event' && each.eventId === 'proposed')).toBe(false);
    expect(plan.flatMap((each) => (each.of === 'followed' ? [each.frame] : [])).sort()).toEqual([110, 120]);
    expect(remarkable(swim, clock)).toEqual({ moments: 33, bodyLines: 2, followed: 2 });
  });
});

describe('the pairs an answer gives', () => {
  const on = '2026-05-01T10:00:00.000Z';
  it('are second minus first: seconds for a moment, pixels an axis for a point that could be seen', () => {
    const [moment] = momentsOf(1);
    if (!moment) throw new Error('the swim has moments');
    expect(remarkingEntries(moment, { frame: moment.frame + 2 }, swim, clock, on)).toMatchObject([
      { item: moment.kind, axis: 'time', difference: expect.closeTo(0.04, 9), frameSeconds: 0.02 },
    ]);
    const points = { of: 'followed', frame: 110, points: [{ landmark: 'toe', x: 15, y: 30 }] } as const;
    expect(remarkingEntries(points, { points: { toe: { x: 14, y: 33 } } }, swim, clock, on)).toMatchObject([
      { item: 'toe', axis: 'x', difference: -1, of: 'followed', pictureHeight: 720 },
      { item: 'toe', axis: 'y', difference: 3, of: 'followed', pictureHeight: 720 },
    ]);
    expect(remarkingEntries(points, { points: {} }, swim, clock, on)).toEqual([]);
    expect(remarkingEntries(points, { frame: 3 }, swim, clock, on)).toEqual([]);
  });
});
