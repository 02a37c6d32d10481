import { kickRhythmReadings } from '#core/measures/events/kick-rhythm';
import { markedSpeedReadings } from '#core/measures/events/marked-speed';
import { strokeRateReadings } from '#core/measures/events/stroke-rate';
import { timingReadings } from '#core/measures/events/timing';
import { drawSwim } from '#tests/shared-core/measures/drawn-swim';
import { contextOf } from '#tests/shared-core/measures/drawn-swim';
import { Coverage } from '#tests/shared-core/measures/coverage-table';

/** Families under proof; a family whose truth `drawSwim` knows is added here in one line. */
const families = [timingReadings, kickRhythmReadings, strokeRateReadings, markedSpeedReadings];

const swims = Number(process.argv[2] ?? 2000);
const coverage = new Coverage();
for (let seed = 1; seed <= swims; seed++) {
  const { swim, eventSd, truth } = drawSwim(seed);
  const context = contextOf(swim, eventSd);
  for (const family of families) coverage.add(family(context), truth);
}
console.log(coverage.markdown());
