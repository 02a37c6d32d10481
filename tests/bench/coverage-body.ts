import { type BodyContext, bodyContext, type BodyInput } from '#core/measures/body/body-context';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { remarkedError } from '#tests/shared-core/measures/remarked-error';
import { allTruths, habitualPostures } from '#tests/shared-core/measures-body/body-truths';
import { drawModel } from '#tests/shared-core/measures-body/draw-model';
import { drawVariedModel } from '#tests/shared-core/measures-body/draw-varied-model';
import { markedSwim } from '#tests/shared-core/measures-body/model-swim';
import { askedReadings, type CoveragePart, runCoverage } from './coverage-run';

// How often the 95 % intervals of readings from landmarks hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage-body.ts [swims] [first seed] [write] [--only id,id]`

type Drawn = {
  readonly seed: number;
  readonly input: BodyInput;
  readonly context: BodyContext;
  readonly truth: ReadonlyMap<string, number>;
};

let last: Drawn | null = null;

/** The swim of a seed, drawn once for the tables that share it. */
function drawn(seed: number): Drawn {
  if (last?.seed === seed) return last;
  const { model, noise } = drawModel(seed);
  const swum = { ...model, hands: true, linesAtEvents: true, underwater: true };
  const input = markedSwim(swum, noise);
  const context = bodyContext(input);
  last = { seed, input, context, truth: allTruths(swum, context) };
  return last;
}

const known: CoveragePart['add'] = (coverage, seed) => {
  const { context, truth } = drawn(seed);
  coverage.add(askedReadings(context), truth);
};

const measured: CoveragePart['add'] = (coverage, seed) => {
  const { input, truth } = drawn(seed);
  const error = remarkedError(input.error, seed);
  coverage.add(askedReadings(bodyContext({ ...input, error })), truth);
};

/** Readings that have an interval of their own for what the swimmer does from cycle to cycle. */
const ofTheSwimmer = /^(undulation-(?!relative)[a-z-]+|kick-amplitude-toe|foot-speed-(up|down))$/;

const swimmer: CoveragePart['add'] = (coverage, seed) => {
  const { habit, varied, noise } = drawVariedModel(seed);
  const context = bodyContext(markedSwim(varied, noise));
  const truths = [...allTruths(habit, context)].filter(([id]) => ofTheSwimmer.test(id));
  coverage.add(askedReadings(context), new Map([...truths, ...habitualPostures(habit, context)]));
};

await runCoverage(import.meta.url, { name: 'coverage-landmarks', writer: 'coverage-body.ts' }, [
  { title: 'This swim: readings from landmarks', coverage: new Coverage(), add: known },
  {
    title: 'This swim, with the marking error measured by marking again (10 to 40 pairs a landmark)',
    coverage: new Coverage(),
    add: measured,
  },
  {
    title: 'This swimmer: strokes that differ in size',
    coverage: new Coverage('this-swimmer'),
    add: swimmer,
  },
]);
