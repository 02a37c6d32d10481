import type { LandmarkName } from '../../../marks/landmark';
import { wrap } from '../../../signal/wave-harmonics';

/**
 * Places of landmarks along a straight body from the toes, as a share of its length from fingertip to toe: of a young adult
 * in streamline, the nine landmarks by de Leva's lengths of segments (J Biomech 1996, 29:1223–1230).
 */
const alongBody: Readonly<Partial<Record<LandmarkName, number>>> = {
  toe: 0,
  ankle: 0.21 / 2.34,
  knee: 0.65 / 2.34,
  hip: 1.08 / 2.34,
  shoulder: 1.6 / 2.34,
  ear: 1.72 / 2.34,
};

/**
 * Length of the wave down a kicking swimmer's body in body lengths, fingertip to toe: a wave of 2.33 m/s a Hz (Zamparo et al.
 * 2002, J Exp Biol 205:2665–2676), so of 2.33 m, on bodies of 1.8 to 2.4 m is 1 to 1.3 of them. Waves of 0.6 to 3 body lengths
 * are told apart by it over any stretch from shoulder to toe.
 */
const usualLength = 1.1;

/** Waves down a kicking body are of no fewer and no more body lengths than these: half and about three times the usual. Our default. */
const lengths = { low: 0.6, high: 3 } as const;

const lagAt = (near: LandmarkName, far: LandmarkName, length: number): number =>
  (2 * Math.PI * ((alongBody[near] as number) - (alongBody[far] as number))) / length;

/** Whether a wave down the body can come so much later at the farther landmark, radians. */
export const isLagOfBody = (near: LandmarkName, far: LandmarkName, lag: number): boolean =>
  lag >= lagAt(near, far, lengths.high) && lag <= lagAt(near, far, lengths.low);

/**
 * Lag of a kick's wave from one landmark to the next marked one, radians. A phase tells a lag only but for whole turns, and
 * with a landmark missing between, half a turn may well be passed: the turn is taken that lies nearest to the lag of a usual
 * wave over that part of the body.
 *
 * @param difference of the phases, far less near, radians
 */
export function unwrappedLag(near: LandmarkName, far: LandmarkName, difference: number): number {
  const usual = lagAt(near, far, usualLength);
  return usual + wrap(difference - usual);
}
