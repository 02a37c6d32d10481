import { glyphPitch } from '#core/drawing/glyph-pitch';
import type { EventKind, Staff } from '#core/marks/event-kind';
import { staffOf } from '#core/marks/event-kind';

interface Band {
  readonly top: number;
  readonly height: number;
}

/** Where everything lies up and down the score, in CSS pixels. */
export interface ScoreLayout {
  readonly staffs: Readonly<Record<Staff, Band>>;
  readonly phases: Band;
  /** Where the numbers of the ties are written, between hands and feet, as words are under notes. */
  readonly ties: Band;
  readonly axisTop: number;
  readonly height: number;
  /** Width of the names on the left. */
  readonly gutter: number;
}

/** Our default shares of the height left for staves; feet get most, they carry the wave. */
const shares = { hands: 0.31, feet: 0.4, head: 0.15, course: 0.14 } as const;
const topSpace = 20;
const axisSpace = 26;
const between = 5;
const phaseHeight = 9;
/** Below this height of the score the ties carry milliseconds only. */
const lowScore = 250;
/** From this height on there is a row of its own for the second pair of ties. */
const highScore = 290;

export function layoutScore(height: number): ScoreLayout {
  const tieHeight = height < lowScore ? 16 : height < highScore ? 30 : 46;
  const room = Math.max(96, height - topSpace - axisSpace - 2 * between - phaseHeight - tieHeight - 4);
  const hands = { top: topSpace, height: room * shares.hands };
  const phases = { top: hands.top + hands.height + 2, height: phaseHeight };
  const ties = { top: phases.top + phases.height, height: tieHeight };
  const feet = { top: ties.top + ties.height, height: room * shares.feet };
  const head = { top: feet.top + feet.height + between, height: room * shares.head };
  const course = { top: head.top + head.height + between, height: room * shares.course };
  const axisTop = course.top + course.height + 2;
  return {
    staffs: { hands, feet, head, course },
    phases,
    ties,
    axisTop,
    height: axisTop + axisSpace,
    gutter: 72,
  };
}

export function glyphHeight(layout: ScoreLayout, kind: EventKind): number {
  const band = layout.staffs[staffOf(kind)];
  return band.top + band.height * glyphPitch[kind];
}
