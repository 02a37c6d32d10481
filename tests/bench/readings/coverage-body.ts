import { bodyContext } from '#core/measures/body/context/body-context';
import { speedVariationDefinitions } from '#core/measures/body/speed/speed-variation';
import { undulationDefinitions } from '#core/measures/body/wave/undulation';
import { waveComponentDefinitions } from '#core/measures/body/wave/wave-components';
import { Coverage } from '../../shared-core/measures/coverage-table';
import { remarkedError } from '../../shared-core/measures/remarked-error';
import {
  type DrawnBody,
  drawBody,
  drawBodyWith,
  drawThirdBody,
  drawVariedBody,
} from '../../shared-core/measures/body/drawn-body';
import { askedReadings, type CoveragePart, runCoverage } from './coverage-run';

// How often the 95 % intervals of readings from landmarks hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/readings/coverage-body.ts [swims] [first seed] [write] [--only id,id]`

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

/** Swims that surge by a set length along travel at the kick's frequency, metres, half of peak-to-peak. */
const surging =
  (surge: number): CoveragePart['add'] =>
  (coverage, seed) => {
    const { context, truth } = drawBodyWith(seed, { surge });
    const told = [...truth].filter(([id]) => id.startsWith('speed-'));
    coverage.add(askedReadings(context, speedVariationDefinitions), new Map(told));
  };

/** Small swimmers on the picture, marked by a coach who has marked few points again: noise is large and little known. */
const coarse: CoveragePart['add'] = (coverage, seed) => {
  const pixelsPerMetre = 60 + (seed % 7) * 10;
  const { input, truth } = drawBodyWith(seed, { pixelsPerMetre });
  const error = remarkedError(input.error, seed, 12);
  const told = [...truth].filter(([id]) => id.startsWith('undulation-'));
  coverage.add(askedReadings(bodyContext({ ...input, error }), undulationDefinitions), new Map(told));
};

await runCoverage(import.meta.url, { name: 'coverage-landmarks', writer: 'readings/coverage-body.ts' }, [
  { title: 'This swim: readings from landmarks', coverage: new Coverage(), add: known },
  {
    title: 'This swim, with the marking error measured by marking again (10 to 40 pairs a landmark)',
    coverage: new Coverage(),
    add: measured,
  },
  { title: 'This swim: a strong third harmonic', coverage: new Coverage(), add: third },
  { title: 'This swim: no surge', coverage: new Coverage(), add: surging(0) },
  { title: 'This swim: a small surge', coverage: new Coverage(), add: surging(0.002) },
  { title: 'This swim: a large surge', coverage: new Coverage(), add: surging(0.03) },
  {
    title: 'This swim: few pixels a metre, and few points marked again (10 to 12 a landmark)',
    coverage: new Coverage(),
    add: coarse,
  },
  {
    title: 'This swimmer: strokes that differ in size',
    coverage: new Coverage('this-swimmer'),
    add: swimmer,
  },
]);
