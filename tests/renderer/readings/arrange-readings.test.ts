import { describe, expect, it } from 'vitest';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { catalogue } from '#core/measures/families';
import { arrangeReadings } from '../../../renderer/readings/arrange-readings';
import { aMark, aSwim } from '../a-swim';

const swim = aSwim({
  events: [
    aMark('n1', 'entry', 10),
    aMark('t1', 'kick-top', 11),
    aMark('b1', 'kick-bottom', 22),
    aMark('x1', 'exit', 45),
    aMark('t2', 'kick-top', 36),
    aMark('b2', 'kick-bottom', 46),
    aMark('n2', 'entry', 65),
    aMark('t3', 'kick-top', 66),
  ],
});
const readings = computeReadings(readingContext(swim, { swimmer: null, markingError: null }));
const none: ReadonlySet<string> = new Set();

describe('the readings as they are laid out', () => {
  const groups = arrangeReadings(catalogue, readings, none);
  const timing = groups.find((each) => each.group === 'timing');

  it('begin with timing, and its milliseconds carry their share of the stroke', () => {
    expect(groups[0]?.group).toBe('timing');
    const row = timing?.first.find((each) => each.definition.id === 'kick1-top-to-entry');
    expect(row?.reading).toMatchObject({ status: 'computed', unit: 'ms' });
    expect(row?.share).toMatchObject({ unit: '%' });
    expect(timing?.first.some((each) => each.definition.id === 'kick1-top-to-entry-percent')).toBe(false);
  });

  it('lose no computed reading: each is among the first, among more, or the share of another', () => {
    const shown = new Set(
      groups.flatMap((each) =>
        [...each.first, ...each.more].flatMap((row) => [row.definition.id, row.share?.id ?? '']),
      ),
    );
    for (const reading of readings) if (reading.status === 'computed') expect(shown).toContain(reading.id);
  });

  it('bring forward what the coach set a target for', () => {
    const pulled = arrangeReadings(catalogue, readings, new Set(['kick-tempo']));
    const kick = (all: typeof pulled) =>
      all.find((each) => each.group === 'kick')?.first.map((row) => row.definition.id);
    expect(kick(pulled)).toContain('kick-tempo');
    expect(kick(groups)).not.toContain('kick-tempo');
  });

  it('say the most wanted of what is missing first', () => {
    const speed = groups.find((each) => each.group === 'speed');
    expect(speed?.first).toEqual([]);
    expect(speed?.missing[0]?.definition.id).toBe('speed-marks');
  });
});
