import { expect, it } from 'vitest';
import { bodyContext } from '#core/measures/body/context/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import { drawModel } from './draw-model';
import { markedSwim } from './model-swim';

/** Half-width of the swimmer's own interval of how deep the knees are at kick bottoms, for a swim that rises so quickly. */
function halfWidth(driftUp: number): number {
  const { model, noise } = drawModel(11);
  const swum = { ...model, base: 'kick' as const, cycles: 8, linesAtEvents: true, hidden: 0, driftUp };
  const context = bodyContext(markedSwim(swum, noise));
  const reading = bodyFamilies
    .flatMap((family) => family.read(context))
    .find(({ id }) => id === 'knee-to-surface-at-kick-bottom');
  if (reading?.status !== 'computed' || !reading.otherInterval) throw new Error('not read');
  return (reading.otherInterval.high - reading.otherInterval.low) / 2;
}

it('a swimmer who rises steadily is not said to differ from kick to kick', () => {
  const level = halfWidth(0);
  expect(level).toBeGreaterThan(0);
  expect(halfWidth(0.2)).toBeLessThan(1.3 * level);
});
