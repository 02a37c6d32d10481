import type { Reading } from './reading';

/**
 * Readings whose intervals held the truth when they were read from seen points alone: chosen on six drawn swims, where none was off
 * by more than half of its half-width, and held on all of six others (tests/bench/see/coverage-seen.ts). All others refuse
 * until lines are laid.
 */
const proved: ReadonlySet<string> = new Set([
  ...['kick-amplitude-toe', 'strouhal', 'distance-per-kick'],
  ...['speed-hip', 'speed-centre-of-mass', 'depth-hip'],
]);

/** A reading of a swim whose points were only seen: said so where that is proved, refused where it is not. */
export function asSeen(reading: Reading): Reading {
  if (reading.status === 'missing' || reading.followed === 0) return reading;
  if (!proved.has(reading.id))
    return { status: 'missing', id: reading.id, reasons: [{ code: 'seen-not-proved' }] };
  return { ...reading, notes: ['not-reviewed', ...reading.notes] };
}

/** Whether a reading stands on points nobody has reviewed: it enters no trial and no season. */
export const isUnreviewed = (reading: Reading): boolean =>
  reading.status === 'computed' && reading.notes.includes('not-reviewed');
