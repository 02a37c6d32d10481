import { eventFamilies } from '#core/measures/events/event-families';
import { contextOf, drawSwim } from '#tests/shared-core/measures/drawn-swim';
import { Coverage } from '#tests/shared-core/measures/coverage-table';

/** Families under proof; a family whose truth `drawSwim` knows is added here in one line. */
const families = [...eventFamilies];

const swims = Number(process.argv[2] ?? 2000);
const coverage = new Coverage();
for (let seed = 1; seed <= swims; seed++) {
  const { swim, eventSd, truth } = drawSwim(seed);
  const context = contextOf(swim, eventSd);
  for (const family of families) coverage.add(family.read(context), truth);
}
console.log(coverage.markdown());
