/**
 * A number that remembers how it depends on each mark: `slopes` holds its first derivative by mark id. Sums, products
 * and quotients carry the slopes along, so marks shared between neighbouring cycles are counted once and with the right
 * sign, instead of as if cycles were independent. Exact for linear readings, first order for others.
 */
export interface Tracked {
  readonly value: number;
  readonly slopes: ReadonlyMap<string, number>;
}

export function trackedMark(id: string, value: number): Tracked {
  return { value, slopes: new Map([[id, 1]]) };
}

/** `a · x + b · y`, with plain numbers a and b. */
export function combine(a: number, x: Tracked, b: number, y: Tracked): Tracked {
  const slopes = new Map<string, number>();
  for (const [id, slope] of x.slopes) slopes.set(id, a * slope);
  for (const [id, slope] of y.slopes) slopes.set(id, (slopes.get(id) ?? 0) + b * slope);
  return { value: a * x.value + b * y.value, slopes };
}

export function difference(later: Tracked, earlier: Tracked): Tracked {
  return combine(1, later, -1, earlier);
}

export function scaled(factor: number, x: Tracked): Tracked {
  return {
    value: factor * x.value,
    slopes: new Map([...x.slopes].map(([id, slope]) => [id, factor * slope])),
  };
}

/** `x / y`, first order; null when y is zero. */
export function quotient(x: Tracked, y: Tracked): Tracked | null {
  if (y.value === 0) return null;
  const ratio = x.value / y.value;
  return { value: ratio, slopes: combine(1 / y.value, x, -ratio / y.value, y).slopes };
}

/** Absolute value: the sign is taken as sure, so it is first order only away from zero. */
export function absolute(x: Tracked): Tracked {
  return x.value < 0 ? scaled(-1, x) : x;
}

export function sum(terms: readonly Tracked[]): Tracked {
  const slopes = new Map<string, number>();
  let value = 0;
  for (const term of terms) {
    value += term.value;
    for (const [id, slope] of term.slopes) slopes.set(id, (slopes.get(id) ?? 0) + slope);
  }
  return { value, slopes };
}

/** Mean of at least one term; null of none. */
export function mean(terms: readonly Tracked[]): Tracked | null {
  return terms.length === 0 ? null : scaled(1 / terms.length, sum(terms));
}

/** Variance from independent marks: Σ slope² · variance of the mark. */
export function trackedVariance(x: Tracked, markVariance: ReadonlyMap<string, number>): number {
  let variance = 0;
  for (const [id, slope] of x.slopes) variance += slope * slope * (markVariance.get(id) ?? 0);
  return variance;
}
