import type { EventKind, Staff } from '#core/marks/event-kind';
import { staffOf } from '#core/marks/event-kind';

export interface Band {
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

/**
 * How high on its staff a kind is written, 0 top to 1 bottom: hands as deep as they are in the water, feet at the
 * top and bottom of the kick. So the glyphs of a stroke make a figure, as notes do.
 */
const pitch: Readonly<Record<EventKind, number>> = {
  entry: 0.2,
  catch: 0.5,
  shoulder: 0.8,
  navel: 0.62,
  exit: 0.2,
  'kick-top': 0.15,
  'kick-bottom': 0.85,
  breath: 0.5,
  'head-in': 0.5,
  breakout: 0.5,
  'push-off': 0.5,
  'distance-mark': 0.5,
  touch: 0.5,
};

/** How high on its staff a kind is written, as a share of the staff: 0 top to 1 bottom. */
export const glyphPitch = (kind: EventKind): number => pitch[kind];

export function glyphHeight(layout: ScoreLayout, kind: EventKind): number {
  const band = layout.staffs[staffOf(kind)];
  return band.top + band.height * pitch[kind];
}
