import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { basisWords, markingBasis } from '#core/measures/marking-basis';
import { readingLandmarks } from '#core/measures/reading-landmarks';
import { type CoachFile, emptyCoach } from '#core/swim-file/coach-file';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import { aMark, aSwim } from '#tests/renderer/a-swim';

const swim = aSwim({
  events: [0, 1, 2, 3, 4].flatMap((i) => [
    aMark(`t${i}`, 'kick-top', 5 + 20 * i),
    aMark(`b${i}`, 'kick-bottom', 14 + 20 * i),
  ]),
});

/** What is said of the down-kick's time, when so many of each kind were marked again. */
function said(pairs: Readonly<Record<string, number>>): string {
  const remarkings = Object.entries(pairs).flatMap(([item, count]) =>
    Array.from({ length: count }, (_, i): CoachFile['remarkings'][number] => ({
      item,
      axis: 'time',
      difference: 0.01 * (i % 3),
      frameSeconds: 0.02,
      of: 'marked',
      on: '2026-05-01T10:00:00.000Z',
      swimId: 'swim-1',
    })),
  );
  const coach = { ...emptyCoach, remarkings };
  const markingError = coachMarkingError(coach, 720);
  const readings = computeReadings(readingContext(swim, { swimmer: null, markingError }));
  const reading = readings.find(({ id }) => id === 'down-kick-time');
  if (reading?.status !== 'computed') throw new Error('the down-kick’s time was expected');
  return basisWords(markingBasis(reading, swim, coach, markingError));
}

describe('what a reading’s marking error rests on', () => {
  it('is said with the number of re-markings of the kinds of mark that went in', () => {
    expect(said({ 'kick-top': 12, 'kick-bottom': 10, entry: 30 })).toBe('measured on 22 re-markings');
    expect(said({ 'kick-top': 12, 'kick-bottom': 9 })).toBe(
      'partly measured on 12 re-markings, the rest assumed',
    );
    expect(said({ 'kick-top': 9, entry: 30 })).toBe('assumed');
    expect(said({})).toBe('assumed');
  });

  it('knows which points a reading is read from', () => {
    expect(readingLandmarks('knee-angle-at-kick-top')).toEqual(['hip', 'knee', 'ankle']);
    expect(readingLandmarks('undulation-relative-hip')).toEqual(['hip']);
    expect(readingLandmarks('harmonic-phase-2-toe')).toEqual(['toe']);
    expect(readingLandmarks('kick-amplitude-toe-relative')).toEqual(['toe']);
    expect(readingLandmarks('speed-centre-of-mass')).toHaveLength(9);
  });
});
