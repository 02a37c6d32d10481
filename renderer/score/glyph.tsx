import { type EventKind, staffOf } from '#core/marks/event-kind';
import { glyphShapes } from './glyph-shape';

/** The bare sign of an event, in its staff's colour on an edge of its own. */
export function Glyph({ kind, scale = 1 }: { readonly kind: EventKind; readonly scale?: number }) {
  const { path, filled } = glyphShapes[kind];
  const colour = `var(--${staffOf(kind)})`;
  return (
    <g transform={scale === 1 ? undefined : `scale(${scale})`} strokeLinejoin="round" strokeLinecap="round">
      <path
        d={path}
        fill={filled ? 'var(--glyph-edge)' : 'none'}
        stroke="var(--glyph-edge)"
        strokeWidth={filled ? 3 : 6}
      />
      <path d={path} fill={filled ? colour : 'none'} stroke={filled ? 'none' : colour} strokeWidth={3} />
    </g>
  );
}
