import type { Point } from '../units/point';

export interface LabelBox {
  /** Point the label speaks of. */
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}

/** Points every `spacing` along a chain: what labels must not lie on when the line itself should stay visible. */
export function pointsAlong(chain: readonly Point[], spacing: number): readonly Point[] {
  return chain.flatMap((from, index) => {
    const to = chain[index + 1];
    if (!to) return [from];
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / spacing));
    return Array.from({ length: steps }, (_, step) => ({
      x: from.x + ((to.x - from.x) * step) / steps,
      y: from.y + ((to.y - from.y) * step) / steps,
    }));
  });
}

/** Twelve ways out, near and then farther off. */
const places = [1, 2.6, 4.4].flatMap((reach) =>
  Array.from({ length: 12 }, (_, step) => ({ reach, turn: (2 * Math.PI * step) / 12 - Math.PI / 2 })),
);

/** How far a point lies outside a box about a centre; negative inside. */
function outside(centre: Point, box: LabelBox, point: Point): number {
  return Math.max(
    Math.abs(point.x - centre.x) - box.width / 2,
    Math.abs(point.y - centre.y) - box.height / 2,
  );
}

/** How much of a label lies beyond the edges of what is seen. */
function cutOff(
  { x, y }: Point,
  { width, height }: LabelBox,
  seen: { readonly width: number; readonly height: number },
): number {
  const across = Math.max(0, width / 2 - x, x + width / 2 - seen.width);
  return across + Math.max(0, height / 2 - y, y + height / 2 - seen.height);
}

/**
 * Centres for labels beside their points: of places around each, near and farther off, the one that keeps clearest of the points
 * to stay visible and of the labels placed before, and that stays `within` what is seen. Greedy, in the order given, so it is stable from frame to frame.
 */
export function placeLabels(
  labels: readonly LabelBox[],
  keepClear: readonly Point[],
  gap: number,
  within: { readonly width: number; readonly height: number } | null = null,
): readonly Point[] {
  const placed: { readonly centre: Point; readonly box: LabelBox }[] = [];
  for (const box of labels) {
    let best: Point = box.at;
    let bestRoom = Number.NEGATIVE_INFINITY;
    places.forEach(({ reach, turn }, index) => {
      const centre = {
        x: box.at.x + Math.cos(turn) * (box.width / 2 + gap * reach),
        y: box.at.y + Math.sin(turn) * (box.height / 2 + gap * reach),
      };
      const fromPoints = Math.min(...keepClear.map((point) => outside(centre, box, point)));
      const fromLabels = Math.min(
        gap * 3,
        ...placed.map((other) =>
          Math.max(
            Math.abs(centre.x - other.centre.x) - (box.width + other.box.width) / 2,
            Math.abs(centre.y - other.centre.y) - (box.height + other.box.height) / 2,
          ),
        ),
      );
      // words over words can't be read; words over a line still can
      const apart = fromLabels < 0 ? 3 * fromLabels : fromLabels;
      // enough room is enough: earlier places (above first) win, so labels don't jump about for a pixel
      const cut = within ? cutOff(centre, box, within) : 0;
      const room = Math.min(fromPoints, apart, gap * 0.8) - index * 0.01 - 5 * cut;
      if (room > bestRoom) {
        bestRoom = room;
        best = centre;
      }
    });
    placed.push({ centre: best, box });
  }
  return placed.map((each) => each.centre);
}
