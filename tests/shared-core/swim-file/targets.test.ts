import { describe, expect, it } from 'vitest';
import { targetAdvice } from '#core/practice/target-advice';
import { type Target, targetHistory, targetInForce, withTarget } from '#core/swim-file/target-in-force';

const target = (low: number | null, high: number | null, from: string | null): Target => ({
  reading: 'stroke-rate',
  low,
  high,
  from,
});

describe('targets', () => {
  it('keep what was aimed at before, and correct what was said on the same day', () => {
    const first = withTarget([], target(40, 44, '2026-05-01'));
    const corrected = withTarget(first, target(40, 45, '2026-05-01'));
    expect(corrected).toEqual([target(40, 45, '2026-05-01')]);
    const later = withTarget(corrected, target(42, 46, '2026-06-01'));
    expect(targetInForce({ targets: later }, 'stroke-rate')).toEqual(target(42, 46, '2026-06-01'));
    expect(targetHistory({ targets: later }, 'stroke-rate').map(({ low }) => low)).toEqual([42, 40]);
    const givenUp = withTarget(later, target(null, null, '2026-07-01'));
    expect(targetInForce({ targets: givenUp }, 'stroke-rate')).toBeNull();
    expect(targetHistory({ targets: givenUp }, 'stroke-rate')).toHaveLength(3);
  });

  it('are advised only where the trade names a number, and only where it holds', () => {
    const card = { arms: 'stretched', sideUp: 'front' } as const;
    expect(targetAdvice('head-offset', card)).toMatchObject({ low: null, high: 0 });
    expect(targetAdvice('head-offset', { ...card, arms: 'stroking' })).toBeNull();
    expect(targetAdvice('knee-to-surface', card)).toBeNull();
    expect(targetAdvice('knee-to-surface', { ...card, sideUp: 'back' })).toMatchObject({ high: 0 });
    expect(targetAdvice('kick-frequency', card)).toBeNull();
  });
});
