import type { SKRSContext2D } from '@napi-rs/canvas';
import type { PoolXY } from '../model/swimmer-model';

/** Half widths of a body part at a place along it: toward its first side and its second, metres. */
export interface Girth {
  /** Place along the joints: 1.4 is two fifths of the way from the second joint to the third. */
  readonly at: number;
  readonly first: number;
  readonly second: number;
}
/** A slice across a body part: its two edges, in pool metres. */
export interface Slice {
  readonly at: number;
  readonly first: PoolXY;
  readonly second: PoolXY;
}

/** A smooth curve through the joints (Catmull and Rom, uniform). `at` as in Girth. */
function along(joints: readonly PoolXY[], at: number): PoolXY {
  const i = Math.max(0, Math.min(joints.length - 2, Math.floor(at)));
  const s = at - i;
  const point = (k: number): PoolXY => {
    const inside = joints[k];
    if (inside) return inside;
    const end = joints[k < 0 ? 0 : joints.length - 1] ?? { x: 0, y: 0 };
    const inner = joints[k < 0 ? 1 : joints.length - 2] ?? end;
    return { x: 2 * end.x - inner.x, y: 2 * end.y - inner.y };
  };
  const [a, b, c, d] = [point(i - 1), point(i), point(i + 1), point(i + 2)];
  // short neighbours must not bend long bones: tangents no longer than the bone itself
  const bone = Math.hypot(c.x - b.x, c.y - b.y);
  const tangent = (p: PoolXY, q: PoolXY): PoolXY => {
    const long = Math.hypot(q.x - p.x, q.y - p.y) || 1;
    const share = (0.62 * bone) / long;
    return { x: (q.x - p.x) * share, y: (q.y - p.y) * share };
  };
  const [m, n] = [tangent(a, c), tangent(b, d)];
  const h1 = (1 + 2 * s) * (1 - s) ** 2;
  const h2 = s * (1 - s) ** 2;
  const h3 = s * s * (3 - 2 * s);
  const h4 = s * s * (s - 1);
  return {
    x: h1 * b.x + h2 * m.x + h3 * c.x + h4 * n.x,
    y: h1 * b.y + h2 * m.y + h3 * c.y + h4 * n.y,
  };
}

function girthAt(girths: readonly Girth[], at: number): Girth {
  let i = 0;
  while (i < girths.length - 2 && at > (girths[i + 1]?.at ?? 0)) i++;
  const a = girths[i];
  const b = girths[i + 1] ?? a;
  if (!a || !b) return { at, first: 0, second: 0 };
  const raw = b.at > a.at ? Math.max(0, Math.min(1, (at - a.at) / (b.at - a.at))) : 0;
  const s = raw * raw * (3 - 2 * raw);
  return { at, first: a.first + (b.first - a.first) * s, second: a.second + (b.second - a.second) * s };
}

/**
 * Slices across a body part. The first side lies to the left of the way from the first joint to the last when `left`,
 * else to its right (y up).
 */
export function slices(joints: readonly PoolXY[], girths: readonly Girth[], left: boolean): readonly Slice[] {
  const many = 14 * (joints.length - 1);
  const end = joints.length - 1;
  return Array.from({ length: many + 1 }, (_, i) => {
    const at = (i / many) * end;
    const here = along(joints, at);
    const before = along(joints, Math.max(0, at - 0.2));
    const after = along(joints, Math.min(end, at + 0.2));
    const long = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    const turn = left ? 1 : -1;
    const normal = { x: (-turn * (after.y - before.y)) / long, y: (turn * (after.x - before.x)) / long };
    const { first, second } = girthAt(girths, at);
    return {
      at,
      first: { x: here.x + normal.x * first, y: here.y + normal.y * first },
      second: { x: here.x - normal.x * second, y: here.y - normal.y * second },
    };
  });
}

type Project = (point: PoolXY) => PoolXY;
const mix = (a: PoolXY, b: PoolXY, share: number): PoolXY => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

/** Fills the part of a ribbon between two shares of its width, with round ends where it has width there. */
function fillBand(
  context: SKRSContext2D,
  ribbon: readonly Slice[],
  project: Project,
  from: number,
  to: number,
): void {
  context.beginPath();
  for (const slice of ribbon) {
    const { x, y } = project(mix(slice.first, slice.second, from));
    context.lineTo(x, y);
  }
  for (const slice of [...ribbon].reverse()) {
    const { x, y } = project(mix(slice.first, slice.second, to));
    context.lineTo(x, y);
  }
  context.closePath();
  context.fill();
}

export interface Tone {
  readonly light: readonly [number, number, number];
  readonly dark: readonly [number, number, number];
}

/** How light falls across a round limb lit from above: share of the width from its upper edge to brightness. */
function roundness(share: number): number {
  if (share < 0.28) return 0.8 + 0.2 * (share / 0.28);
  return 1 - ((share - 0.28) / 0.72) ** 1.35;
}

/** Draws a ribbon as a round body lit from above: nested bands, each over the one before, so no seams show. */
export function drawRound(
  context: SKRSContext2D,
  ribbon: readonly Slice[],
  project: Project,
  tone: Tone,
  reach?: { readonly from: number; readonly to: number },
): void {
  const part = reach ? ribbon.filter((slice) => slice.at >= reach.from && slice.at <= reach.to) : ribbon;
  const lift = part.reduce((sum, slice) => sum + slice.first.y - slice.second.y, 0);
  const firstIsUp = lift >= 0;
  const bands = 11;
  for (let i = 0; i < bands; i++) {
    const share = i / bands;
    const shine = roundness(share + 0.5 / bands);
    const colour = [0, 1, 2].map((k) =>
      Math.round((tone.dark[k] ?? 0) + ((tone.light[k] ?? 0) - (tone.dark[k] ?? 0)) * shine),
    );
    context.fillStyle = `rgb(${colour.join(',')})`;
    if (firstIsUp) fillBand(context, part, project, share, 1);
    else fillBand(context, part, project, 1 - share, 0);
  }
}
