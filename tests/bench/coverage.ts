import { eventFamilies } from '#core/measures/events/event-families';
import { contextOf, drawSwim } from '#tests/shared-core/measures/drawn-swim';
import { Coverage } from '#tests/shared-core/measures/coverage-table';

/** Families under proof; a family whose truth `drawSwim` knows is added here in one line. */
const families = [...eventFamilies];

// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage.ts [swims] [first seed]`
const swims = Number(process.argv[2] ?? 2000);
const first = Number(process.argv[3] ?? 1);
const coverage = new Coverage();
for (let seed = first; seed < first + swims; seed++) {
  const { swim, eventSd, truth } = drawSwim(seed);
  const context = contextOf(swim, eventSd);
  for (const family of families) coverage.add(family.read(context), truth);
}
console.log(coverage.markdown());
