import { expect, it } from 'vitest';
import { eventFamilies } from '#core/measures/events/event-families';
import { chanceOfSoFew, Coverage } from './coverage-table';
import { contextOf, drawSwim } from './drawn-swim';

it('intervals of event readings hold the truth 93 to 97 times in 100 over simulated swims', () => {
  const coverage = new Coverage();
  for (let seed = 1; seed <= 400; seed++) {
    const { swim, eventSd, truth } = drawSwim(seed);
    const context = contextOf(swim, eventSd);
    for (const family of eventFamilies) coverage.add(family.read(context), truth);
  }
  const rows = coverage.rows();
  expect(rows.length).toBeGreaterThan(25);
  for (const { id, drawn, held, lean, isCount } of rows) {
    // beside the 93–97 asked for, what chance does once in 2,000 rows of so many draws
    const hits = Math.round(held * drawn);
    expect(chanceOfSoFew(hits, drawn, 0.93), id).toBeGreaterThan(5e-4);
    if (!isCount) expect(chanceOfSoFew(drawn - hits, drawn, 0.03), id).toBeGreaterThan(5e-4);
    // a lean within a tenth of the half-width, and three standard errors (half-widths are about two SDs)
    expect(Math.abs(lean), id).toBeLessThan(0.1 + 3 / (2 * Math.sqrt(drawn)));
  }
});
