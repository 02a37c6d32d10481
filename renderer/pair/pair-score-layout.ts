import { type EventKind, type Staff, staffOf } from '#core/marks/event-kind';
import { type Band, glyphPitch } from '../score/score-layout';
import type { Which } from './pair-view';

/** A staff of the common score: the same part of the body of both swims, A over B. */
export interface PairStaff {
  readonly staff: Staff;
  readonly lanes: readonly [Band, Band];
}

export interface PairScoreLayout {
  readonly staves: readonly PairStaff[];
  readonly gutter: number;
  readonly top: number;
  readonly axisTop: number;
  readonly height: number;
}

/** Our default shares of a lane's height; feet get most, they carry the wave. */
const shares: Readonly<Record<Staff, number>> = { hands: 1, feet: 1.25, head: 0.62, course: 0.62 };
const topSpace = 20;
const axisSpace = 26;
const between = 6;
const leastUnit = 26;

/** Lays out the staves that hold marks; hands and feet are always there. */
export function layoutPairScore(height: number, used: ReadonlySet<Staff>): PairScoreLayout {
  const staffs = (Object.keys(shares) as Staff[]).filter(
    (staff) => staff === 'hands' || staff === 'feet' || used.has(staff),
  );
  const sum = staffs.reduce((all, staff) => all + 2 * shares[staff], 0);
  const room = height - topSpace - axisSpace - between * (staffs.length - 1);
  const unit = Math.max(leastUnit, room / sum);
  let top = topSpace;
  const staves = staffs.map((staff): PairStaff => {
    const lane = unit * shares[staff];
    const lanes = [
      { top, height: lane },
      { top: top + lane, height: lane },
    ] as const;
    top += 2 * lane + between;
    return { staff, lanes };
  });
  const axisTop = top - between + 2;
  return { staves, gutter: 78, top: topSpace, axisTop, height: axisTop + axisSpace };
}

/** Middle of a kind's glyph in its swim's lane, or null where its staff is not drawn. */
export function pairGlyphHeight(layout: PairScoreLayout, which: Which, kind: EventKind): number | null {
  const found = layout.staves.find(({ staff }) => staff === staffOf(kind));
  if (!found) return null;
  const { top, height } = found.lanes[which];
  // glyphs are 16 high: kept inside the lane
  const inset = Math.min(9, height / 2);
  return top + inset + (height - 2 * inset) * glyphPitch(kind);
}
