import { describe, expect, it } from 'vitest';
import { bodyContext } from '#core/measures/body/context/body-context';
import { computeReadings } from '#core/measures/compute-readings';
import { neededReadings, type Reading } from '#core/measures/reading';
import { reasonWords } from '#core/measures/reason-words';
import { markedSwim, plainKick } from './body/model-swim';

const at = (framesPerSecond: number, slowdown = 1): ReadonlyMap<string, Reading> => {
  const input = markedSwim({ ...plainKick, framesPerSecond, every: 1 });
  const clock = { ...input.clock, slowdown };
  return new Map(computeReadings(bodyContext({ ...input, clock })).map((each) => [each.id, each]));
};

const notesOf = (readings: ReadonlyMap<string, Reading>, id: string): readonly string[] => {
  const reading = readings.get(id);
  if (reading?.status !== 'computed') throw new Error(`no ${id}`);
  return reading.notes;
};

describe('few pictures a kick', () => {
  // a kick of 0.48 s: 14.4 pictures at 30 a second, 15.4 at 32; fifteen are wanted
  it('are said of what is read at single instants, just below fifteen and not just above', () => {
    const coarse = at(30);
    const enough = at(32);
    for (const id of ['down-kick-time', 'up-kick-time', 'foot-speed-down']) {
      expect(notesOf(coarse, id), id).toContain('few-pictures');
      expect(notesOf(enough, id), id).not.toContain('few-pictures');
    }
  });

  it('are not said of what many pictures tell together', () => {
    const coarse = at(30);
    for (const id of ['kick-frequency', 'speed-hip', 'trunk-pitch'])
      expect(notesOf(coarse, id), id).not.toContain('few-pictures');
  });

  it('are counted in real time: slow motion has as many as it was filmed with', () => {
    // the same film stored eight times slower shows a kick of 0.06 s on as many pictures
    expect(notesOf(at(30, 8), 'down-kick-time')).toContain('few-pictures');
    expect(notesOf(at(60, 8), 'down-kick-time')).not.toContain('few-pictures');
  });
});

describe('what is missing, in words', () => {
  it('names marks once, and the side a mark is wanted on', () => {
    expect(reasonWords({ code: 'needs-events', kind: 'distance-mark', have: 0, need: 2 })).toBe(
      'Needs 2 distance marks',
    );
    expect(reasonWords({ code: 'needs-events', kind: 'kick-top', have: 1, need: 2 })).toBe(
      'Needs 2 kick top marks, has 1',
    );
    expect(
      reasonWords({ code: 'needs-event-beside', kind: 'distance-mark', side: 'before', of: 'breakout' }),
    ).toBe('Needs a distance mark before the breakout');
  });

  it('never shows a reading’s id', () => {
    for (const reading of neededReadings)
      expect(reasonWords({ code: 'needs-reading', reading })).not.toContain(reading);
  });

  it('says how many body lines hold a point outside the picture', () => {
    expect(reasonWords({ code: 'outside-picture', landmark: 'toe', frames: 1 })).toBe(
      'The toe is marked outside the picture on 1 body line: move it in, or leave it out',
    );
  });
});

describe('a body table of young adults', () => {
  const input = markedSwim({ ...plainKick, underwater: true });
  const born = (birthYear: number | null): ReadonlyMap<string, Reading> => {
    const swimmer = { streamlineMetres: null, bodyTable: null, birthYear };
    return new Map(computeReadings(bodyContext({ ...input, swimmer })).map((each) => [each.id, each]));
  };
  const ofWholeBody = [
    'speed-centre-of-mass',
    'speed-variation',
    'speed-lowest',
    'undulation-centre-of-mass',
    'undulation-relative-centre-of-mass',
    'foot-speed-over-swim',
    'strouhal',
    'froude',
    'distance-per-kick',
  ];

  it('is approximate for all that is read from the centre of mass of a child', () => {
    // the swim is of 2024
    const child = born(2007);
    for (const id of ofWholeBody) expect(notesOf(child, id), id).toContain('approximate-for-children');
    expect(notesOf(child, 'speed-hip')).not.toContain('approximate-for-children');
  });

  it('is not said from eighteen on, nor of who has no birth year', () => {
    for (const readings of [born(2006), born(null)])
      for (const id of ofWholeBody)
        expect(notesOf(readings, id), id).not.toContain('approximate-for-children');
  });
});

describe('mean ± SD', () => {
  it('is of kicks or strokes where cycles have values, and of body lines where postures have', () => {
    const readings = at(60);
    const singles = (id: string) => {
      const reading = readings.get(id);
      if (reading?.status !== 'computed') throw new Error(`no ${id}`);
      return { singles: reading.singles, values: reading.perCycle.map(({ value }) => value) };
    };
    const down = singles('down-kick-time');
    expect(down.singles).toMatchObject({ of: 'cycles', count: down.values.length });
    const knee = singles('knee-angle');
    expect(knee.singles).toMatchObject({ of: 'body-lines', count: knee.values.length });
    // by hand: root of the mean square about the mean, over one less than the count
    const mean = knee.values.reduce((sum, v) => sum + v, 0) / knee.values.length;
    const square = knee.values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (knee.values.length - 1);
    expect(knee.singles?.sd).toBeCloseTo(Math.sqrt(square), 9);
    expect(singles('speed-hip').singles).toBeNull();
  });

  it('is there for more body lines than are listed one by one', () => {
    const dense = markedSwim({ ...plainKick, framesPerSecond: 120 });
    const found = computeReadings(bodyContext(dense)).find(({ id }) => id === 'knee-angle');
    if (found?.status !== 'computed') throw new Error('no knee angle');
    expect(found.perCycle).toEqual([]);
    expect(found.singles).toMatchObject({ of: 'body-lines', count: dense.swim.postures.length });
    const plain = at(60).get('knee-angle');
    // the same movement on twice the pictures
    expect(found.singles?.sd).toBeCloseTo((plain?.status === 'computed' && plain.singles?.sd) || 0, 1);
  });
});
