import jStat from 'jstat';
import { z95 } from './normal-quantile';

/**
 * 97.5 % quantile of Student's t, for two-sided 95 % intervals; degrees of freedom need not be whole. Without any:
 * infinity. By jStat's inverse of the incomplete beta function.
 */
export function studentQuantile975(degreesOfFreedom: number): number {
  return degreesOfFreedom > 0 ? jStat.studentt.inv(0.975, degreesOfFreedom) : Infinity;
}

const widenings = new Map<number, number>();

/** Degrees of freedom from which Student's t is as good as normal. */
const many = 1000;

/**
 * How many times wider a 95 % interval is for standard errors that were themselves estimated: Student's quantile over the
 * normal one, at whole degrees of freedom, rounded down. 1 where nothing was estimated (infinity).
 */
export function studentWidening(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom < many)) return 1;
  const whole = Math.max(1, Math.floor(degreesOfFreedom));
  const known = widenings.get(whole) ?? studentQuantile975(whole) / z95;
  widenings.set(whole, known);
  return known;
}
