import jStat from 'jstat';

/**
 * 97.5 % quantile of Student's t, for two-sided 95 % intervals; degrees of freedom need not be whole. Without any:
 * infinity. By jStat's inverse of the incomplete beta function.
 */
export function studentQuantile975(degreesOfFreedom: number): number {
  return degreesOfFreedom > 0 ? jStat.studentt.inv(0.975, degreesOfFreedom) : Infinity;
}
