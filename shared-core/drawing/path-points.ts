import type { Point } from '../units/point';

/** Straight pieces that a half circle is drawn in. Our default: at glyph size no corner is seen. */
const arcPieces = 24;

/**
 * The strokes of a glyph's path as points. Reads what glyphs are written in: M, L, H, V, h, v, Z, and A with its ends
 * level or of equal radii; throws on anything else.
 */
export function pathPoints(path: string): readonly (readonly Point[])[] {
  const strokes: Point[][] = [];
  let at: Point = { x: 0, y: 0 };
  const put = (to: Point): void => {
    strokes.at(-1)?.push(to);
    at = to;
  };
  for (const [, letter = '', numbers = ''] of path.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const values = [...numbers.matchAll(/-?\d*\.?\d+/g)].map(Number);
    const value = (index: number): number => values[index] ?? Number.NaN;
    switch (letter) {
      case 'M':
        strokes.push([]);
        put({ x: value(0), y: value(1) });
        // further pairs after a move are lines
        for (let i = 2; i + 1 < values.length; i += 2) put({ x: value(i), y: value(i + 1) });
        break;
      case 'L':
        for (let i = 0; i + 1 < values.length; i += 2) put({ x: value(i), y: value(i + 1) });
        break;
      case 'H':
        put({ x: value(0), y: at.y });
        break;
      case 'V':
        put({ x: at.x, y: value(0) });
        break;
      case 'h':
        put({ x: at.x + value(0), y: at.y });
        break;
      case 'v':
        put({ x: at.x, y: at.y + value(0) });
        break;
      case 'A':
        for (let i = 0; i + 6 < values.length; i += 7)
          for (const point of arc(
            at,
            { x: value(i + 5), y: value(i + 6) },
            value(i),
            value(i + 1),
            value(i + 4),
          ))
            put(point);
        break;
      case 'Z': {
        const first = strokes.at(-1)?.[0];
        if (first) put(first);
        break;
      }
      default:
        throw new Error(`a glyph's path can't hold “${letter}”`);
    }
  }
  return strokes;
}

/** Points of an elliptic arc of at most half a turn, its axes upright; radii too small are stretched, as SVG has it. */
function arc(from: Point, to: Point, rx: number, ry: number, sweep: number): readonly Point[] {
  // in a space where the ellipse is a circle of radius 1
  const a = { x: from.x / rx, y: from.y / ry };
  const b = { x: to.x / rx, y: to.y / ry };
  const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
  const radius = Math.max(1, half);
  const rise = Math.sqrt(Math.max(0, radius * radius - half * half));
  const way = sweep === 1 ? 1 : -1;
  const centre = {
    x: (a.x + b.x) / 2 - (way * rise * (b.y - a.y)) / (2 * half),
    y: (a.y + b.y) / 2 + (way * rise * (b.x - a.x)) / (2 * half),
  };
  const begin = Math.atan2(a.y - centre.y, a.x - centre.x);
  let turn = Math.atan2(b.y - centre.y, b.x - centre.x) - begin;
  if (way > 0 && turn < 0) turn += 2 * Math.PI;
  if (way < 0 && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: arcPieces }, (_, piece) => {
    const angle = begin + (turn * (piece + 1)) / arcPieces;
    return {
      x: (centre.x + radius * Math.cos(angle)) * rx,
      y: (centre.y + radius * Math.sin(angle)) * ry,
    };
  });
}
