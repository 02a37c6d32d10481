import { type EventKind, type Staff, staffOf } from '../marks/event-kind';
import type { Point } from '../units/point';
import type { DrawingOp } from './drawing-op';
import { glyphShapes } from './glyph-shape';
import { pathPoints } from './path-points';

/** Colours of the staves on a dark ground: Okabe & Ito 2008; shapes always say the same. */
export const staffColour: Readonly<Record<Staff, string>> = {
  hands: '#e69f00',
  feet: '#56b4e9',
  head: '#cc79a7',
  course: '#f0f0f0',
};

/** The sign of an event about a point, on an edge of its own. `scale` 1 is 16 pixels high. */
export function glyphOps(kind: EventKind, at: Point, scale: number, edge: string): readonly DrawingOp[] {
  const { path, filled } = glyphShapes[kind];
  const colour = staffColour[staffOf(kind)];
  const strokes = pathPoints(path).map((points) =>
    points.map(({ x, y }) => ({ x: at.x + x * scale, y: at.y + y * scale })),
  );
  if (filled)
    return strokes.map((points) => ({
      op: 'area',
      points,
      fill: colour,
      edge: { colour: edge, width: 3 * scale },
    }));
  return [
    ...strokes.map((points): DrawingOp => ({ op: 'line', points, colour: edge, width: 6 * scale })),
    ...strokes.map((points): DrawingOp => ({ op: 'line', points, colour, width: 3 * scale })),
  ];
}
