import { type EventKind, staffOf } from '#core/marks/event-kind';
import { glyphShapes } from '#core/drawing/glyph-shape';

/** The bare sign of an event, in its staff's colour on an edge of its own. */
export function Glyph({
  kind,
  scale = 1,
  hollow = false,
}: {
  readonly kind: EventKind;
  readonly scale?: number;
  /** Only proposed: an outline, thin and broken. */
  readonly hollow?: boolean;
}) {
  const { path, filled } = glyphShapes[kind];
  // course signs are drawn in the ink itself, so their edge is the ground
  const edge = staffOf(kind) === 'course' ? 'var(--ground)' : 'var(--glyph-edge)';
  const colour = `var(--${staffOf(kind)})`;
  if (hollow)
    return (
      <g strokeLinejoin="round" strokeLinecap="round">
        <path d={path} fill="none" stroke={edge} strokeWidth={4} />
        <path d={path} fill="none" stroke={colour} strokeWidth={1.8} strokeDasharray="3.2 2.4" />
      </g>
    );
  return (
    <g transform={scale === 1 ? undefined : `scale(${scale})`} strokeLinejoin="round" strokeLinecap="round">
      <path d={path} fill={filled ? edge : 'none'} stroke={edge} strokeWidth={filled ? 3 : 6} />
      <path d={path} fill={filled ? colour : 'none'} stroke={filled ? 'none' : colour} strokeWidth={3} />
    </g>
  );
}
