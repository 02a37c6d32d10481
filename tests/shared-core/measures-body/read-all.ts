import { type BodyContext, bodyContext, type BodyInput } from '#core/measures/body/body-context';
import { bodyFamilies } from '#core/measures/body/body-families';
import type { ComputedReading, Reading } from '#core/measures/reading';

export function readAll(input: BodyInput): { context: BodyContext; readings: ReadonlyMap<string, Reading> } {
  const context = bodyContext(input);
  const readings = bodyFamilies.flatMap((family) => family.read(context));
  return { context, readings: new Map(readings.map((r) => [r.id, r])) };
}

export function computed(readings: ReadonlyMap<string, Reading>, id: string): ComputedReading {
  const reading = readings.get(id);
  if (reading?.status !== 'computed') throw new Error(`${id}: ${JSON.stringify(reading?.reasons)}`);
  return reading;
}
