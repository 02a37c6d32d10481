/** Harmonics of the kick that are fitted at most: enough for an uneven kick, below the noise of marking. Our default. */
export const kickHarmonics = 3;
