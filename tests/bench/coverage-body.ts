import { bodyContext } from '#core/measures/body/body-context';
import { computeReadings } from '#core/measures/compute-readings';
import { Coverage } from '#tests/shared-core/measures/coverage-table';
import { remarkedError } from '#tests/shared-core/measures/remarked-error';
import { allTruths } from '#tests/shared-core/measures-body/body-truths';
import { drawModel } from '#tests/shared-core/measures-body/draw-model';
import { markedSwim } from '#tests/shared-core/measures-body/model-swim';
import { normal, seeded } from '../../sample-clips/model/seeded';
import { writeSection } from './write-section';

// How often the 95 % intervals of readings from landmarks hold the truth:
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/coverage-body.ts [swims] [first seed] [write] [sparse|dense]`
const swims = Number(process.argv[2] ?? 2000);
const first = Number(process.argv[3] ?? 1);
const kind = process.argv[5];

const known = new Coverage();
const measured = new Coverage();
const swimmer = new Coverage('this-swimmer');
for (let seed = first; seed < first + swims; seed++) {
  const { model, noise } = drawModel(seed, kind);
  const input = markedSwim({ ...model, hands: true, underwater: true }, noise);
  const context = bodyContext(input);
  const truth = allTruths({ ...model, underwater: true }, context);
  known.add(computeReadings(context), truth);
  const remarked = { ...input, error: remarkedError(input.error, seed) };
  measured.add(computeReadings(bodyContext(remarked)), truth);
  const random = seeded(seed ^ 0x2545f491);
  const spread = 0.04 + 0.08 * random();
  const habit = {
    ...model,
    base: 'stroke' as const,
    period: 0.95 + 0.55 * random(),
    shoulder: 0.04 + 0.06 * random(),
    cycles: 3 + Math.floor(6 * random()),
    every: Math.max(1, model.every),
    hidden: 0,
  };
  const varied = { ...habit, sizes: Array.from({ length: habit.cycles }, () => spread * normal(random)) };
  const quiet = { ...noise, landmarkSd: Math.min(noise.landmarkSd, 1), offPlaneSd: 0, eventSd: 0.003 };
  const swum = bodyContext(markedSwim(varied, quiet));
  const habits = allTruths(habit, swum);
  const asked = new Map(
    [...habits].filter(
      ([id]) =>
        /^(undulation-[a-z-]+|kick-amplitude-toe|foot-speed-(up|down))$/.test(id) && !id.includes('relative'),
    ),
  );
  swimmer.add(computeReadings(swum), asked);
}
const parts = [
  ['This swim: readings from landmarks', known],
  ['This swim, with the marking error measured by marking again (10 to 40 pairs a landmark)', measured],
  ['This swimmer: strokes that differ in size', swimmer],
] as const;
const lines = parts.flatMap(([title, coverage]) => [
  '',
  `**${title}** (${swims} swims, seeds from ${first})`,
  '',
  ...coverage.markdown().split('\n'),
]);
if (process.argv[4] === 'write')
  writeSection('coverage-landmarks', 'coverage-body.ts', lines.slice(1), 'measures');
for (const [title, coverage] of parts)
  console.log(title, '\n  ', coverage.failing().join('\n   ') || 'all within');
