import { describe, expect, it } from 'vitest';
import { drillById } from '#core/practice/drill-library';
import { itemPhrase, workPhrase } from '#core/practice/item-phrase';
import { usualPatterns } from '#core/practice/usual-pattern';
import { workOfItem } from '#core/practice/work';
import { anItem } from './a-practice';

const pattern = usualPatterns[0]?.pattern ?? null;

describe('an item on the card', () => {
  it('reads as a coach would write it', () => {
    const item = anItem({ pattern, targetCount: 8, breathingEvery: 2, effort: 'full' });
    expect(itemPhrase(item, null)).toBe(
      '6 × 25 butterfly on the front · 2 right, 2 left, 4 both · 8 strokes · a breath every 2 strokes · full effort · every 1:00',
    );
  });

  it('names its drill, its ladder, its kick and its rest', () => {
    const kickBetween = { metres: 25, aids: [], arms: 'stretched' as const, sideUp: 'front' as const };
    const item = anItem({
      repeats: 2,
      kickBetween,
      pause: { kind: 'rest', seconds: 5.46 },
      ladder: { of: 'lengths', rungs: [1, 2, 3], stepMetres: 25 },
      effort: null,
    });
    expect(itemPhrase(item, drillById('kick-in-kick-out', []))).toBe(
      '2 × (25, 50, 75) Kick in, kick out · 25 kick between · rest 0:05.5',
    );
    const counts = anItem({ targetCount: 8, ladder: { of: 'count', rungs: [0, 2, -1] }, pause: null });
    expect(itemPhrase(counts, null)).toContain('8 strokes · strokes +0, +2, -1 · steady');
    expect(itemPhrase(anItem({ ladder: { of: 'pattern', rungs: [3, 2, 1] } }), null)).toContain(
      '6 × (3-2-1 right, left, both) 25',
    );
  });

  it('carries seconds over into minutes', () => {
    expect(itemPhrase(anItem({ pause: { kind: 'send-off', seconds: 59.97 } }), null)).toContain('every 1:00');
  });
});

describe('a work in words', () => {
  it('says side, arms and aids', () => {
    const item = anItem({
      stroke: 'dolphin-kick',
      sideUp: 'back',
      arms: 'folded',
      aids: ['fins', 'snorkel'],
    });
    expect(workPhrase(workOfItem(item), null)).toBe(
      'dolphin kick on the back, arms folded, with fins and snorkel',
    );
    expect(workPhrase(workOfItem(anItem({ words: 'New drill' })), null)).toBe('new drill on the front');
  });
});
