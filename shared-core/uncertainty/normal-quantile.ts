/** Normal quantile for two-sided 95 %. */
export const z95 = 1.959964;
