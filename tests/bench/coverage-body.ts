import { bodyContext } from '#core/measures/body/body-context';
import { waveComponentDefinitions } from '#core/measures/body/wave-components';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { remarkedError } from '#tests/shared-core/measures/remarked-error';
import {
  type DrawnBody,
  drawBody,
  drawThirdBody,
  drawVariedBody,
} from '#tests/shared-core/measures-body/drawn-body';
import { askedReadings, type CoveragePart, runCoverage } from './coverage-run';

// How often the 95 % intervals of readings from landmarks hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage-body.ts [swims] [first seed] [write] [--only id,id]`

let last: { readonly seed: number; readonly body: DrawnBody } | null = null;

/** The swim of a seed, drawn once for the tables that share it. */
function drawn(seed: number): DrawnBody {
  if (last?.seed !== seed) last = { seed, body: drawBody(seed) };
  return last.body;
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

const third: CoveragePart['add'] = (coverage, seed) => {
  const { context, truth } = drawThirdBody(seed);
  coverage.add(askedReadings(context, waveComponentDefinitions), truth);
};

const swimmer: CoveragePart['add'] = (coverage, seed) => {
  const { context, truth } = drawVariedBody(seed);
  coverage.add(askedReadings(context), truth);
};

await runCoverage(import.meta.url, { name: 'coverage-landmarks', writer: 'coverage-body.ts' }, [
  { title: 'This swim: readings from landmarks', coverage: new Coverage(), add: known },
  {
    title: 'This swim, with the marking error measured by marking again (10 to 40 pairs a landmark)',
    coverage: new Coverage(),
    add: measured,
  },
  { title: 'This swim: a strong third harmonic', coverage: new Coverage(), add: third },
  {
    title: 'This swimmer: strokes that differ in size',
    coverage: new Coverage('this-swimmer'),
    add: swimmer,
  },
]);
