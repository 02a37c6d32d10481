/** Knots of one cycle, [share of the cycle, value], shares rising within [0, 1). */
export type Knots = readonly (readonly [number, number])[];

/** A smooth closed curve through the knots: cubic Hermite, each tangent along the chord of its neighbours. Period 1. */
export function periodicCurve(knots: Knots): (share: number) => number {
  const many = knots.length;
  const at = (i: number): readonly [number, number] => {
    const around = Math.floor(i / many);
    const [share, value] = knots[i - around * many] ?? [0, 0];
    return [share + around, value];
  };
  const tangent = (i: number): number => {
    const [x0, y0] = at(i - 1);
    const [x1, y1] = at(i + 1);
    return (y1 - y0) / (x1 - x0);
  };
  const first = knots[0]?.[0] ?? 0;
  return (any) => {
    const share = any - first - Math.floor(any - first) + first;
    let i = 0;
    while (at(i + 1)[0] <= share) i++;
    const [x0, y0] = at(i);
    const [x1, y1] = at(i + 1);
    const width = x1 - x0;
    const s = (share - x0) / width;
    return (
      (1 + 2 * s) * (1 - s) ** 2 * y0 +
      s * (1 - s) ** 2 * width * tangent(i) +
      s * s * (3 - 2 * s) * y1 +
      s * s * (s - 1) * width * tangent(i + 1)
    );
  };
}
