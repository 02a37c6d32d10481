import { z95 } from '../uncertainty/normal-quantile';

/** Directions in which a vector has parts, each with noise: 2 for one harmonic (cosine and sine), 4 for two together. */
export type Directions = 2 | 4;

type Row = readonly [seen: number, low: number, high: number];

/**
 * What a size can be in truth, at 95 %, that was seen with normal noise of standard deviation 1 in each direction. Made by
 * tests/reference/size_interval.py.
 */
const tables: Readonly<Record<Directions, readonly Row[]>> = {
  2: [
    [0, 0, 1.635],
    [0.25, 0, 1.735],
    [0.5, 0, 1.978],
    [0.75, 0, 2.268],
    [1, 0, 2.567],
    [1.25, 0, 2.875],
    [1.5, 0, 3.19],
    [1.75, 0, 3.485],
    [2, 0, 3.765],
    [2.25, 0, 4.035],
    [2.448, 0, 4.245],
    [2.5, 0.295, 4.3],
    [2.75, 0.753, 4.563],
    [3, 1.075, 4.823],
    [3.25, 1.368, 5.083],
    [3.5, 1.645, 5.34],
    [3.75, 1.8, 5.598],
    [4, 1.968, 5.855],
    [4.25, 2.15, 6.11],
    [4.5, 2.35, 6.363],
    [4.75, 2.578, 6.618],
    [5, 2.835, 6.873],
    [5.25, 3.123, 7.128],
    [5.5, 3.403, 7.38],
    [5.75, 3.67, 7.633],
    [6, 3.933, 7.885],
  ],
  4: [
    [0, 0, 1.625],
    [0.25, 0, 1.64],
    [0.5, 0, 1.695],
    [0.75, 0, 1.83],
    [1, 0, 2.053],
    [1.25, 0, 2.34],
    [1.5, 0, 2.655],
    [1.75, 0, 2.985],
    [2, 0, 3.323],
    [2.25, 0, 3.65],
    [2.5, 0, 3.958],
    [2.75, 0, 4.253],
    [3, 0, 4.54],
    [3.08, 0, 4.63],
    [3.25, 0.683, 4.82],
    [3.5, 1.125, 5.095],
    [3.75, 1.48, 5.368],
    [4, 1.758, 5.638],
    [4.25, 1.965, 5.905],
    [4.5, 2.17, 6.17],
    [4.75, 2.385, 6.433],
    [5, 2.613, 6.695],
    [5.25, 2.86, 6.958],
    [5.5, 3.128, 7.218],
    [5.75, 3.415, 7.478],
    [6, 3.698, 7.738],
    [6.25, 3.973, 7.995],
    [6.5, 4.243, 8.245],
    [6.75, 4.51, 8.48],
    [7, 4.775, 8.698],
  ],
};

export interface SizeInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * 95 % interval of the size of a vector (the amplitude of a wave, of cosine and sine part) from the size seen. Noise makes
 * every size look bigger and one near nothing much bigger, so the interval is no size ± something: it is made of all
 * sizes to which what was seen is likely enough against the size it suits best, and holds any true size, 0 too, 95 times
 * in 100.
 *
 * @param seen size with its noise, not below 0
 * @param sd standard deviation of the noise in each direction, above 0; the unit of the size
 * @see Rice 1944 (the density); Feldman, Cousins 1998, Phys Rev D 57:3873 (the interval)
 */
export function sizeInterval(seen: number, sd: number, directions: Directions = 2): SizeInterval {
  const r = seen / sd;
  const rows = tables[directions];
  const above = rows.findIndex(([knot]) => knot > r);
  const [before, after] = [rows[above - 1], rows[above]];
  if (!before || !after) {
    // beyond the table the distribution is as good as normal
    const size = trueSize(seen, sd, directions);
    return { low: size - z95 * sd, high: size + z95 * sd };
  }
  const share = (r - before[0]) / (after[0] - before[0]);
  const between = (column: 1 | 2): number => sd * (before[column] + share * (after[column] - before[column]));
  return { low: between(1), high: between(2) };
}

/**
 * The size behind the one seen: root of its square less the noise's square across it; 0 where that is below 0. Leans little
 * from one standard deviation on.
 *
 * @see Wardle, Kronberg 1974, Astrophys J 194:249 (the same question, of polarised light; from memory)
 */
export function trueSize(seen: number, sd: number, directions: Directions = 2): number {
  return Math.sqrt(Math.max(0, seen * seen - (directions - 1) * sd * sd));
}
