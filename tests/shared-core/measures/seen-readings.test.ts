import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { computeReadings, everyReading, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import { asSeen, isUnreviewed } from '#core/measures/seen-readings';
import { landmarkNames } from '#core/marks/landmark';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';

const nobody = { swimmer: null, markingError: null };
const file = new URL('../../../sample-clips/library/swims/sample-streamline-kick/swim.json', import.meta.url);
const parsed = parseSwim(readFileSync(fileURLToPath(file), 'utf8'));
if (!parsed.ok) throw new Error('a sample');
const marked = parsed.value;

/** The sample's own lines as if they had been seen: every landmark a run of its marked frames, filled in between. */
const seen: Swim['seen'] = landmarkNames.map((landmark) => {
  const lines = marked.postures.flatMap(({ frame, points }) => {
    const at = points[landmark];
    return at ? [{ frame, at }] : [];
  });
  const first = lines[0]?.frame ?? 0;
  const last = lines.at(-1)?.frame ?? 0;
  return {
    landmark,
    frame: first,
    points: Array.from({ length: last - first + 1 }, (_, i): [number, number, number] => {
      const frame = first + i;
      const after = Math.max(
        1,
        lines.findIndex((each) => each.frame >= frame),
      );
      const [a, b] = [lines[after - 1], lines[after]];
      if (!a || !b) return [a?.at.x ?? 0, a?.at.y ?? 0, 3];
      const share = (frame - a.frame) / (b.frame - a.frame);
      return [a.at.x + share * (b.at.x - a.at.x), a.at.y + share * (b.at.y - a.at.y), 3];
    }),
  };
});
const seenOnly: Swim = { ...marked, postures: [], followed: [], seen };
const read = (swim: Swim): ReadonlyMap<string, Reading> =>
  new Map(computeReadings(readingContext(swim, nobody)).map((each) => [each.id, each]));

describe('readings of points that were only seen', () => {
  it('are said to be not reviewed, or refused in words; those of marked moments stay as they are', () => {
    const every = everyReading(readingContext(seenOnly, nobody));
    const fromPoints = every.filter((each) => each.status === 'computed' && each.followed > 0);
    expect(fromPoints.length).toBeGreaterThan(20);
    const readings = read(seenOnly);
    for (const { id } of fromPoints) {
      const reading = readings.get(id);
      if (reading?.status === 'computed') expect([id, isUnreviewed(reading)]).toEqual([id, true]);
      else expect([id, reading?.reasons]).toEqual([id, [{ code: 'seen-not-proved' }]]);
    }
    expect(readings.get('kick-amplitude-toe')).toMatchObject({
      notes: expect.arrayContaining(['not-reviewed']),
    });
    expect(readings.get('trunk-pitch')).toMatchObject({ reasons: [{ code: 'seen-not-proved' }] });
    const frequency = readings.get('kick-frequency');
    expect(frequency?.status === 'computed' && !isUnreviewed(frequency)).toBe(true);
  });

  it('go before nothing the coach laid: two lines, and seen points are read no longer', () => {
    const [a, b] = marked.postures;
    if (!a || !b) throw new Error('two lines');
    for (const reading of read({ ...seenOnly, postures: [a, b] }).values())
      if (reading.status === 'computed') expect(isUnreviewed(reading)).toBe(false);
  });

  it('leave a reading that looks at no seen point alone', () => {
    const [first] = everyReading(readingContext(marked, nobody)).filter(
      ({ status }) => status === 'computed',
    );
    expect(first && asSeen(first)).toBe(first);
  });
});
