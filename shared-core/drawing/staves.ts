import { type EventKind, type Staff, staffOf } from '../marks/event-kind';
import { glyphPitch } from './glyph-pitch';

interface Lane {
  readonly top: number;
  readonly height: number;
}

/** A staff of a score: one part of the body, with a lane for each swim, the first on top. */
interface LanedStaff {
  readonly staff: Staff;
  readonly lanes: readonly Lane[];
}

export interface Staves {
  readonly staves: readonly LanedStaff[];
  readonly top: number;
  /** Where the time axis runs. */
  readonly axisTop: number;
  readonly height: number;
}

export interface StaveSizes {
  readonly lanes: number;
  readonly top: number;
  readonly axis: number;
  readonly between: number;
  /** Least height of a lane of the hands. */
  readonly least: number;
}

/** Our default shares of a lane's height; feet get most, they carry the wave. */
const shares: Readonly<Record<Staff, number>> = { hands: 1, feet: 1.25, head: 0.62, course: 0.62 };

/** Lays out the staves that hold marks in a height; hands and feet are always there. */
export function layoutStaves(height: number, used: ReadonlySet<Staff>, sizes: StaveSizes): Staves {
  const staffs = (Object.keys(shares) as Staff[]).filter(
    (staff) => staff === 'hands' || staff === 'feet' || used.has(staff),
  );
  const sum = staffs.reduce((all, staff) => all + sizes.lanes * shares[staff], 0);
  const room = height - sizes.top - sizes.axis - sizes.between * (staffs.length - 1);
  const unit = Math.max(sizes.least, room / sum);
  let top = sizes.top;
  const staves = staffs.map((staff): LanedStaff => {
    const lane = unit * shares[staff];
    const from = top;
    top += sizes.lanes * lane + sizes.between;
    return {
      staff,
      lanes: Array.from({ length: sizes.lanes }, (_, i) => ({ top: from + i * lane, height: lane })),
    };
  });
  const axisTop = top - sizes.between + 2;
  return { staves, top: sizes.top, axisTop, height: axisTop + sizes.axis };
}

/** Middle of a kind's glyph in a swim's lane, or null where its staff is not drawn. `half`: half a glyph's height. */
export function lanedGlyphHeight(
  { staves }: Staves,
  which: number,
  kind: EventKind,
  half: number,
): number | null {
  const lane = staves.find(({ staff }) => staff === staffOf(kind))?.lanes[which];
  if (!lane) return null;
  // glyphs are kept inside their lane
  const inset = Math.min(half, lane.height / 2);
  return lane.top + inset + (lane.height - 2 * inset) * glyphPitch[kind];
}
