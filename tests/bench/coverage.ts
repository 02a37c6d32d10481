import type { BodyContext } from '#core/measures/body/body-context';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { contextOf, type DrawnSwim, drawSwim, markingErrorOf } from '#tests/shared-core/measures/drawn-swim';
import { drawUnderwater } from '#tests/shared-core/measures/drawn-underwater';
import { drawVariedKicking, drawVariedSwim } from '#tests/shared-core/measures/drawn-varied-swim';
import { remarkedError } from '#tests/shared-core/measures/remarked-error';
import { writeSection } from './write-section';

// How often the 95 % intervals of readings from events hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage.ts [swims] [first seed] [write]`
const swims = Number(process.argv[2] ?? 2000);
const first = Number(process.argv[3] ?? 1);

function run(
  coverage: Coverage,
  draw: (seed: number) => DrawnSwim,
  contextFor = ({ swim, eventSd }: DrawnSwim, _seed: number): BodyContext => contextOf(swim, eventSd),
): Coverage {
  for (let seed = first; seed < first + swims; seed++) {
    const drawn = draw(seed);
    coverage.add(computeReadings(contextFor(drawn, seed)), drawn.truth);
  }
  return coverage;
}

const parts: readonly (readonly [string, Coverage])[] = [
  ['This swim: readings from events', run(new Coverage(), drawSwim)],
  ['This swim: the underwater part', run(new Coverage(), drawUnderwater)],
  [
    'This swim, with the marking error measured by marking again (10 to 40 pairs a kind)',
    run(new Coverage(), drawSwim, ({ swim, eventSd }, seed) =>
      readingContext(swim, {
        swimmer: null,
        markingError: remarkedError(markingErrorOf(eventSd), seed),
      }),
    ),
  ],
  ['This swimmer: strokes that differ', run(new Coverage('this-swimmer'), drawVariedSwim)],
  ['This swimmer: kicks that differ', run(new Coverage('this-swimmer'), drawVariedKicking)],
];
const lines = parts.flatMap(([title, coverage]) => [
  '',
  `**${title}** (${swims} swims, seeds from ${first})`,
  '',
  ...coverage.markdown().split('\n'),
]);
if (process.argv[4] === 'write') writeSection('coverage-events', 'coverage.ts', lines.slice(1), 'measures');
for (const [title, coverage] of parts)
  console.log(title, '\n  ', coverage.failing().join('\n   ') || 'all within');
