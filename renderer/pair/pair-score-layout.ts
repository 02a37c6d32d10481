import { lanedGlyphHeight, layoutStaves, type Staves } from '#core/drawing/staves';
import type { EventKind, Staff } from '#core/marks/event-kind';
import type { Which } from './pair-view';

export interface PairScoreLayout extends Staves {
  /** Width of the names on the left. */
  readonly gutter: number;
}

/** The common score in CSS pixels: each staff holds A over B. */
export function layoutPairScore(height: number, used: ReadonlySet<Staff>): PairScoreLayout {
  return {
    ...layoutStaves(height, used, { lanes: 2, top: 20, axis: 26, between: 6, least: 26 }),
    gutter: 78,
  };
}

export function pairGlyphHeight(layout: PairScoreLayout, which: Which, kind: EventKind): number | null {
  return lanedGlyphHeight(layout, which, kind, 9);
}
