import { bodyContext } from '#core/measures/body/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { markedSwim } from '#tests/shared-core/measures-body/model-swim';
import { drawModel } from '#tests/shared-core/measures-body/draw-model';
import { bodyTruths } from '#tests/shared-core/measures-body/body-truths';

// how often the 95 % intervals of the landmark readings hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage-body.ts [swims] [first seed] [sparse|dense]`
const swims = Number(process.argv[2] ?? 2000);
const first = Number(process.argv[3] ?? 1);
const kind = process.argv[4];
const coverage = new Coverage();
for (let seed = first; seed < first + swims; seed++) {
  const { model, noise } = drawModel(seed, kind);
  const input = markedSwim(model, noise);
  const context = bodyContext(input);
  const truth = bodyTruths(model, context);
  for (const family of bodyFamilies) coverage.add(family.read(context), truth);
}
console.log(coverage.markdown());
