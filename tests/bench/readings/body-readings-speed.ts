import { bodyContext } from '#core/measures/body/context/body-context';
import type { BodyInput } from '#core/measures/body/context/body-input';
import { computeReadings } from '#core/measures/compute-readings';
import type { EventMark } from '#core/swim-file/swim-schema';
import { markedSwim, plainKick } from '../../shared-core/measures/body/model-swim';
import { writeSection } from '../write-section';

// Butterfly at 60 a second, nine landmarks on every frame: how long the whole catalogue takes, from nothing and after a
// mark moved, in processor time, which a busy machine disturbs least.
// `npx tsx --tsconfig tests/tsconfig.json tests/bench/readings/body-readings-speed.ts [write]`; 54 strokes are one minute
const lines = [
  '## Readings of full traces',
  '',
  'Butterfly at 60 a second, nine landmarks on every frame; processor time of 30 rounds after 10 to warm up.',
  '',
  '| work | quickest, ms | median, ms | slowest, ms |',
  '| --- | ---: | ---: | ---: |',
];

function timed(label: string, work: (round: number) => unknown): void {
  const times: number[] = [];
  for (let i = 0; i < 40; i++) {
    const start = process.cpuUsage();
    work(i);
    const { user, system } = process.cpuUsage(start);
    times.push((user + system) / 1000);
  }
  const sorted = times.slice(10).sort((a, b) => a - b);
  const at = (share: number): string =>
    (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(1);
  lines.push(`| ${label} | ${at(0)} | ${at(0.5)} | ${at(1)} |`);
}

const moved = (input: BodyInput, kind: EventMark['kind'], round: number): BodyInput => {
  const mark = input.swim.events.find((each) => each.kind === kind);
  const events = input.swim.events.map((each) =>
    each === mark ? { ...each, frame: each.frame + 1 - (round % 3) } : each,
  );
  return { ...input, swim: { ...input.swim, events } };
};

for (const strokes of [13, 27, 54, 100]) {
  const input = markedSwim({ ...plainKick, base: 'stroke', period: 1.1, shoulder: 0.07, cycles: strokes });
  const points = `${strokes} strokes, ${9 * input.swim.postures.length} points`;
  timed(`${points}: whole catalogue`, () => {
    // postures of their own each time, so that nothing of the last round can be used
    const swim = { ...input.swim, postures: [...input.swim.postures] };
    return computeReadings(bodyContext({ ...input, swim }));
  });
  for (const kind of ['kick-top', 'entry'] as const)
    timed(`${points}: after a ${kind} moved`, (round) =>
      computeReadings(bodyContext(moved(input, kind, round))),
    );
}
console.log(lines.join('\n'));
if (process.argv[2] === 'write') writeSection('readings-speed', 'readings/body-readings-speed.ts', lines);
