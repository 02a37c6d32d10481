import { bodyContext } from '#core/measures/body/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import { computeReadings } from '#core/measures/compute-readings';
import { markedSwim, plainKick } from '#tests/shared-core/measures-body/model-swim';

// one minute of butterfly at 60 a second, nine landmarks on every frame: how long all landmark readings take
function timed(label: string, work: () => unknown): void {
  const times: number[] = [];
  for (let i = 0; i < 30; i++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  const sorted = times.slice(5).sort((a, b) => a - b);
  console.log(
    `${label}: quickest ${sorted[0]?.toFixed(1)} ms, median ${sorted[12]?.toFixed(1)} ms, slowest ${sorted.at(-1)?.toFixed(1)} ms`,
  );
}
for (const strokes of [54, 108]) {
  const input = markedSwim({ ...plainKick, base: 'stroke', period: 1.1, shoulder: 0.07, cycles: strokes });
  const postures = input.swim.postures.length;
  timed(`${postures} postures, landmark readings`, () => {
    const context = bodyContext(input);
    return bodyFamilies.map((family) => family.read(context));
  });
  timed(`${postures} postures, whole catalogue`, () => computeReadings(bodyContext(input)));
}
const input = markedSwim({ ...plainKick, base: 'stroke', period: 1.1, shoulder: 0.07, cycles: 54 });
const context = bodyContext(input);
for (const family of bodyFamilies)
  timed(family.definitions[0]?.id ?? '', () => family.read(bodyContext(input)));
timed('context', () => bodyContext(input));
console.log(context.postures.length);
