import { fitLine } from '../../../signal/fit-line';
import type { BodyGeometry } from './body-geometry';
import { keptWith } from '../../../units/kept-with';

/** Share of its length by which the trunk must grow or shrink over the marks before it is said. Our default. */
const worthSaying = 0.05;

/** Share of a trunk's length by which bending and rolling may change it beside marking error. Our default. */
const bendShare = 0.03;

/**
 * Whether the swimmer nears or leaves the camera: shoulder to hip in the picture grows or shrinks by more than 5 %
 * from the first to the last mark, and surely (95 %) not for marking and bending alone. Lengths are then read too large
 * where the swimmer is near, and speed too small by the cosine of the angle.
 */
export const sizeChange = keptWith(measured);

function measured(geometry: BodyGeometry): boolean {
  const times: number[] = [];
  const lengths: number[] = [];
  const { shoulder, hip } = geometry.columns;
  for (const { time, place } of geometry.postures) {
    const dx = (shoulder.x[place] as number) - (hip.x[place] as number);
    const dy = (shoulder.y[place] as number) - (hip.y[place] as number);
    if (Number.isNaN(dx)) continue;
    times.push(time);
    lengths.push(Math.sqrt(dx * dx + dy * dy));
  }
  const line = fitLine(times, lengths);
  const mean = lengths.reduce((sum, each) => sum + each, 0) / lengths.length;
  if (!line || !(mean > 0)) return false;
  const span = (times.at(-1) ?? 0) - (times[0] as number);
  const marking = geometry.landmarkSd('shoulder') ** 2 + geometry.landmarkSd('hip') ** 2;
  const noise = marking + (bendShare * mean) ** 2;
  const change = Math.abs(line.slope) * span;
  const error = 1.96 * span * Math.sqrt(line.slopeVariance * noise);
  return change > worthSaying * mean && change - error > 0;
}
