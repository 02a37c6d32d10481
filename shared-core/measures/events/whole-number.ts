import { z95 } from '../../uncertainty/normal-quantile';

/**
 * Variance that gives a count ± 0.5 at 95 %: a whole number stands for everything that rounds to it, so that not even
 * a count claims to be known without width. Our default.
 */
export const wholeNumberVariance = (0.5 / z95) ** 2;
