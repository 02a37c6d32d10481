import type { BodyContext } from '#core/measures/body/context/body-context';
import { readingContext } from '#core/measures/compute-readings';
import { Coverage } from '../../shared-core/measures/coverage-table';
import { contextOf, type DrawnSwim, drawSwim, markingErrorOf } from '../../shared-core/measures/drawn-swim';
import { drawUnderwater } from '../../shared-core/measures/drawn-underwater';
import { drawVariedKicking, drawVariedSwim } from '../../shared-core/measures/drawn-varied-swim';
import { remarkedError } from '../../shared-core/measures/remarked-error';
import { askedReadings, type CoveragePart, runCoverage } from './coverage-run';

// How often the 95 % intervals of readings from events hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/readings/coverage.ts [swims] [first seed] [write] [--only id,id]`

const adding =
  (
    draw: (seed: number) => DrawnSwim,
    contextFor = ({ swim, eventSd }: DrawnSwim, _seed: number): BodyContext => contextOf(swim, eventSd),
  ): CoveragePart['add'] =>
  (coverage, seed) => {
    const drawn = draw(seed);
    coverage.add(askedReadings(contextFor(drawn, seed)), drawn.truth);
  };

/** The swim as read by a coach who measured the own marking error. */
const remarked = ({ swim, eventSd }: DrawnSwim, seed: number): BodyContext =>
  readingContext(swim, { swimmer: null, markingError: remarkedError(markingErrorOf(eventSd), seed) });

const thisSwim = (): Coverage => new Coverage();
const thisSwimmer = (): Coverage => new Coverage('this-swimmer');
await runCoverage(import.meta.url, { name: 'coverage-events', writer: 'readings/coverage.ts' }, [
  { title: 'This swim: readings from events', coverage: thisSwim(), add: adding(drawSwim) },
  { title: 'This swim: the underwater part', coverage: thisSwim(), add: adding(drawUnderwater) },
  {
    title: 'This swim, with the marking error measured by marking again (10 to 40 pairs a kind)',
    coverage: thisSwim(),
    add: adding(drawSwim, remarked),
  },
  {
    title: 'This swim: the underwater part, with the marking error measured by marking again',
    coverage: thisSwim(),
    add: adding(drawUnderwater, remarked),
  },
  { title: 'This swimmer: strokes that differ', coverage: thisSwimmer(), add: adding(drawVariedSwim) },
  { title: 'This swimmer: kicks that differ', coverage: thisSwimmer(), add: adding(drawVariedKicking) },
]);
