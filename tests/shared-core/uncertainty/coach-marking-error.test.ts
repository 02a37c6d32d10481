import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { ComputedReading } from '#core/measures/reading';
import { type CoachFile, emptyCoach } from '#core/swim-file/coach-file';
import { assumedMarkingError } from '#core/uncertainty/assumed-marking-error';
import { coachMarkingError, coachRepeatability } from '#core/uncertainty/coach-marking-error';
import { aMark, aSwim } from '#tests/renderer/a-swim';
import { normal, seeded } from '../../../sample-clips/model/seeded';

type Entry = CoachFile['remarkings'][number];

const entry = (change: Partial<Entry>): Entry => ({
  item: 'toe',
  axis: 'x',
  difference: 0,
  frameSeconds: null,
  of: 'marked',
  on: '2024-05-14T09:00:00.000Z',
  swimId: 'swim-1',
  ...change,
});
const coachOf = (remarkings: Entry[]): CoachFile => ({ ...emptyCoach, remarkings });

/** Pixel differences of a coach whose marks err by `marked`, against marks or points followed with `followed`. */
function points(
  count: number,
  marked: number,
  followed: number | null,
  change: Partial<Entry> = {},
): Entry[] {
  const random = seeded(11 + count);
  return Array.from({ length: count }, (_, i) =>
    entry({
      axis: i % 2 === 0 ? 'x' : 'y',
      of: followed === null ? 'marked' : 'followed',
      difference: marked * normal(random) - (followed ?? marked) * normal(random),
      ...change,
    }),
  );
}

describe('the coach’s own marking error', () => {
  it('is the assumed one until something was re-marked ten times', () => {
    expect(coachMarkingError(emptyCoach, 720)).toEqual(assumedMarkingError(720));
    const few = coachOf(points(9, 3, null));
    expect(coachMarkingError(few, 720).measured.landmarks).toEqual([]);
    expect(coachMarkingError(few, 720).basis).toBe('assumed');
  });

  it('finds what points were marked and followed with, each apart', () => {
    // 4,000 pairs: standard error of an SD is 1.1 %; the followed one comes of a difference of squares
    const coach = coachOf([...points(4000, 2, null), ...points(3998, 2, 5)]);
    const found = coachMarkingError(coach, 720);
    expect(found.landmarkSd.toe / 2).toBeCloseTo(1, 1);
    expect(found.followedSd.toe / 5).toBeCloseTo(1, 1);
    expect(found.measured).toEqual({ events: [], landmarks: ['toe'], followed: ['toe'] });
    expect(found.landmarkSd.hip).toBe(assumedMarkingError(720).landmarkSd.hip);
    // a machine that always leans 6 px along the picture errs by that too: by hand √(5² + 6² / 2)
    const leaning = points(3998, 2, 5).map((each) =>
      each.axis === 'x' ? { ...each, difference: each.difference - 6 } : each,
    );
    const leant = coachMarkingError(coachOf([...points(4000, 2, null), ...leaning]), 720);
    expect(leant.followedSd.toe / Math.sqrt(43)).toBeCloseTo(1, 1);
    // a point followed as well as can be is still not held better than a marked one
    const lucky = coachMarkingError(coachOf([...points(40, 2, null), ...points(42, 0, 0.1)]), 720);
    expect(lucky.followedSd.toe).toBe(lucky.landmarkSd.toe);
  });

  it('carries pixels over to a picture of another size', () => {
    const small = coachMarkingError(coachOf(points(60, 2, null, { pictureHeight: 720 })), 720);
    const large = coachMarkingError(coachOf(points(60, 2, null, { pictureHeight: 720 })), 1440);
    expect(large.landmarkSd.toe / small.landmarkSd.toe).toBeCloseTo(2, 12);
  });

  it('tells the shoulder of the body line from the instant of the same name', () => {
    const coach = coachOf([
      ...Array.from({ length: 12 }, (_, i) =>
        entry({ item: 'shoulder', axis: 'time', difference: 0.01 * (i % 3) }),
      ),
      ...Array.from({ length: 4 }, () => entry({ item: 'shoulder', axis: 'y', difference: 2 })),
    ]);
    expect(coachMarkingError(coach, 720).measured).toEqual({
      events: ['shoulder'],
      landmarks: [],
      followed: [],
    });
    const rows = coachRepeatability(coach, 720);
    expect(rows.map(({ item, axis, pairs }) => [item, axis, pairs])).toEqual([
      ['shoulder', 'time', 12],
      ['shoulder', 'y', 4],
    ]);
    expect(rows[1]?.found).toMatchObject({ bias: 2, typicalError: 0, tooFew: true });
  });

  it('is said of each reading: measured, assumed or partly so', () => {
    const swim = aSwim({
      events: [0, 1, 2, 3].flatMap((i) => [
        aMark(`e${i}`, 'entry', 4 + 24 * i),
        aMark(`t${i}`, 'kick-top', 5 + 24 * i),
        aMark(`b${i}`, 'kick-bottom', 9 + 24 * i),
        aMark(`u${i}`, 'kick-top', 16 + 24 * i),
        aMark(`c${i}`, 'kick-bottom', 20 + 24 * i),
      ]),
    });
    const coach = coachOf(
      ['kick-top', 'kick-bottom'].flatMap((item) =>
        Array.from({ length: 10 }, (_, i) =>
          entry({ item, axis: 'time', difference: 0.01 * (i % 4), frameSeconds: 0.02 }),
        ),
      ),
    );
    const readings = computeReadings(
      readingContext(swim, { swimmer: null, markingError: coachMarkingError(coach, 720) }),
    );
    const notes = (id: string): readonly string[] =>
      readings.find((each): each is ComputedReading => each.id === id && each.status === 'computed')
        ?.notes ?? ['?'];
    expect(notes('kick-frequency').filter((note) => note.startsWith('marking'))).toEqual([]);
    expect(notes('stroke-rate')).toContain('marking-error-assumed');
    expect(notes('kick1-top-to-entry')).toContain('marking-error-part-assumed');
  });
});
