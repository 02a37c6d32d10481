import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventKinds } from '#core/marks/event-kind';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import { parseSwim } from '#core/swim-file/swim-file';
import { plainMark, type Swim } from '#core/swim-file/swim-schema';

const folder = fileURLToPath(new URL('../../../sample-clips/library/swims/', import.meta.url));
const sample = (id: string): Swim => {
  const parsed = parseSwim(readFileSync(`${folder}${id}/swim.json`, 'utf8'));
  if (!parsed.ok) throw new Error(id);
  return parsed.value;
};
const read = (swim: Swim): readonly Reading[] =>
  computeReadings(readingContext(swim, { swimmer: null, markingError: null }));
/** The same swim with nothing shared, so that nothing kept can be used. */
const afresh = (swim: Swim): readonly Reading[] => read(structuredClone(swim));

describe('readings kept while only other things move', () => {
  it('are those that would be made anew, whatever is changed in whatever order', () => {
    const start = sample('sample-butterfly-together');
    const change = fc.oneof(
      fc.record({ what: fc.constant('move' as const), which: fc.nat(60), frame: fc.nat(160) }),
      fc.record({
        what: fc.constant('add' as const),
        kind: fc.constantFrom(...eventKinds),
        frame: fc.nat(160),
      }),
      fc.record({ what: fc.constant('drop' as const), which: fc.nat(60) }),
      fc.record({ what: fc.constant('posture' as const), which: fc.nat(79) }),
      fc.record({
        what: fc.constant('view' as const),
        view: fc.constantFrom('side' as const, 'deck' as const),
      }),
      fc.record({
        what: fc.constant('travel' as const),
        travel: fc.constantFrom('left' as const, 'right' as const),
      }),
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 3, maxLength: 6 }), (changes) => {
        let swim = start;
        let made = 0;
        for (const each of changes) {
          if (each.what === 'move')
            swim = {
              ...swim,
              events: swim.events.map((e, i) => (i === each.which ? { ...e, frame: each.frame } : e)),
            };
          if (each.what === 'drop')
            swim = { ...swim, events: swim.events.filter((_, i) => i !== each.which) };
          if (each.what === 'add')
            swim = {
              ...swim,
              events: [
                ...swim.events,
                { id: `new${made++}`, kind: each.kind, frame: each.frame, ...plainMark },
              ],
            };
          if (each.what === 'posture')
            swim = { ...swim, postures: swim.postures.filter((_, i) => i !== each.which) };
          if (each.what === 'view') swim = { ...swim, card: { ...swim.card, view: each.view } };
          if (each.what === 'travel') swim = { ...swim, scene: { ...swim.scene, travel: each.travel } };
          expect(read(swim)).toEqual(afresh(swim));
        }
      }),
      { numRuns: 6 },
    );
  });

  it('are the very same objects when a mark moves that they do not look at', () => {
    const swim = sample('sample-butterfly-together');
    const before = new Map(read(swim).map((each) => [each.id, each]));
    const moved = {
      ...swim,
      events: swim.events.map((e) =>
        e.kind === 'breath' || e.kind === 'exit' ? { ...e, frame: e.frame + 1 } : e,
      ),
    };
    const after = new Map(read(moved).map((each) => [each.id, each]));
    for (const id of [
      'undulation-toe',
      'speed-hip',
      'body-wave-speed',
      'kick-amplitude-toe',
      'harmonic-1-hip',
    ])
      expect(after.get(id), id).toBe(before.get(id));
    expect(after.get('kick2-bottom-to-exit')).not.toEqual(before.get('kick2-bottom-to-exit'));
  });
});
