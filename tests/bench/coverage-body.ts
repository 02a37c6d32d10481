import { bodyContext } from '#core/measures/body/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { markedSwim } from '#tests/shared-core/measures-body/model-swim';
import { drawModel } from '#tests/shared-core/measures-body/draw-model';
import { bodyTruths } from '#tests/shared-core/measures-body/body-truths';

// how often the 95 % intervals of the landmark readings hold the truth: `tsx tests/bench/coverage-body.ts [swims] [kind]`
const swims = Number(process.argv[2] ?? 2000);
const kind = process.argv[3];
const coverage = new Coverage();
for (let seed = 1; seed <= swims; seed++) {
  const { model, noise } = drawModel(seed, kind);
  const input = markedSwim(model, noise);
  const context = bodyContext(input);
  const truth = bodyTruths(model, context);
  for (const family of bodyFamilies) coverage.add(family.read(context), truth);
}
console.log(coverage.markdown());
