import type { Reading } from './reading';

export interface Band {
  readonly low: number;
  readonly high: number;
}

/**
 * What people do when they kick and swim, wide enough for all ages. Outside of it the marks, the scale or the slow motion are
 * doubted, never the swimmer.
 *
 * Kick frequency: 2.00 ± 0.39 Hz in 35 children of 11.5 years; three standard deviations to each side are 0.83 to 3.17, and
 * the adults' 1.6 to 2.5 (Zamparo et al. 2002; Connaboy et al. 2010) lie within. Kick amplitude: 0.46 ± 0.08 m in the same
 * children, 0.22 to 0.70; widened by a third of the length of the body to either side, for those of 1.2 to 2 m. Speed:
 * 1.08 m/s in the same children, 1.12 to 1.85 m/s in Olympic swimmers; from half the children's mean to a third above the
 * fastest, as a push-off begins quicker. Stroke rate: 20 to 75 a minute, from slow drills to sprints (from memory).
 *
 * @see Wądrzyk, Nosiadek, Staszkiewicz 2017, Human Movement 18(4)
 * @see von Loebbecke et al. 2009, J Biomech Eng 131:054504
 */
export const plausible = {
  'kick-frequency': { low: 0.8, high: 3.2 },
  'kick-amplitude-toe': { low: 0.15, high: 0.95 },
  speed: { low: 0.5, high: 2.5 },
  'stroke-rate': { low: 20, high: 75 },
} as const satisfies Readonly<Record<string, Band>>;

/** Readings that are speeds of the swimmer in metres a second. */
const speeds: ReadonlySet<string> = new Set(['speed-hip', 'speed-centre-of-mass', 'speed-marks']);

/** Whether a whole interval lies outside a band: a value that may be inside raises no doubt. */
export function isOutside(reading: Reading | undefined, { low, high }: Band): boolean {
  return reading?.status === 'computed' && (reading.interval.high < low || reading.interval.low > high);
}

/** Whether the times of a swim are such as people rarely swim. */
export function timesUnusual(readings: ReadonlyMap<string, Reading>): boolean {
  const stroke = readings.get('stroke-rate');
  const isStroke = stroke?.status === 'computed';
  // one kick a stroke is slow: among strokes their own rate is asked
  if (
    isStroke
      ? isOutside(stroke, plausible['stroke-rate'])
      : isOutside(readings.get('kick-frequency'), plausible['kick-frequency'])
  )
    return true;
  return [...speeds].some((id) => {
    const reading = readings.get(id);
    if (reading?.status !== 'computed' || reading.unit !== 'm/s') return false;
    // told the wrong way round a speed is below nothing, which says nothing about the times
    const { low, high } = reading.interval;
    return high < 0
      ? -high > plausible.speed.high || -low < plausible.speed.low
      : isOutside(reading, plausible.speed);
  });
}

/** Whether the kick's size in metres is such as people rarely kick. */
export function amplitudeUnusual(readings: ReadonlyMap<string, Reading>): boolean {
  const reading = readings.get('kick-amplitude-toe');
  return (
    reading?.status === 'computed' &&
    reading.unit === 'm' &&
    isOutside(reading, plausible['kick-amplitude-toe'])
  );
}
