/** A curve through anchors, at [place, value] with rising places; smooth, without overshoot (Fritsch and Carlson 1980). */
export type Anchors = readonly (readonly [number, number])[];

/** Value at `place`; before the first and after the last anchor, the end's own value. */
export function anchoredCurve(anchors: Anchors): (place: number) => number {
  const at = (i: number): readonly [number, number] =>
    anchors[Math.max(0, Math.min(anchors.length - 1, i))] ?? [0, 0];
  const slope = (i: number): number => {
    const [x0, y0] = at(i);
    const [x1, y1] = at(i + 1);
    return x1 > x0 ? (y1 - y0) / (x1 - x0) : 0;
  };
  const tangents = anchors.map((_, i) => {
    if (i === 0 || i === anchors.length - 1) return slope(Math.min(i, anchors.length - 2));
    const before = slope(i - 1);
    const after = slope(i);
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
  return (place) => {
    let i = 0;
    while (i < anchors.length - 2 && place > at(i + 1)[0]) i++;
    const [x0, y0] = at(i);
    const [x1, y1] = at(i + 1);
    const width = x1 - x0;
    const s = Math.max(0, Math.min(1, (place - x0) / width));
    const h00 = (1 + 2 * s) * (1 - s) ** 2;
    const h10 = s * (1 - s) ** 2;
    const h01 = s * s * (3 - 2 * s);
    const h11 = s * s * (s - 1);
    return h00 * y0 + h10 * width * (tangents[i] ?? 0) + h01 * y1 + h11 * width * (tangents[i + 1] ?? 0);
  };
}
