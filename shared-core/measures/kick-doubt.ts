import { humanKickHz } from './events/kick-rhythm';

/** Slowdowns cameras commonly make: 60, 120, 240 and 480 pictures a second stored at 30, and none. */
const commonSlowdowns = [1, 2, 4, 8, 16] as const;
/** Of several slowdowns that fit, the one that brings the kick nearest to this is named (common pace, no source). */
const usualHz = 2;

export interface KickDoubt {
  readonly hz: number;
  readonly tooSlow: boolean;
  /** A common slowdown with which the reading would be a human's, and what it would read; null when none fits. */
  readonly better: { readonly slowdown: number; readonly hz: number } | null;
}

/**
 * Whether a kick frequency (Hz, at the slowdown the swim now has) is implausible for a human; null when it is plausible or
 * no number. Frequency is proportional to slowdown.
 */
export function kickDoubt(hz: number, slowdown: number): KickDoubt | null {
  if (!(hz > 0) || !(slowdown > 0)) return null;
  if (hz >= humanKickHz.low && hz <= humanKickHz.high) return null;
  const fitting = commonSlowdowns
    .map((each) => ({ slowdown: each, hz: (hz * each) / slowdown }))
    .filter((each) => each.hz >= humanKickHz.low && each.hz <= humanKickHz.high)
    .sort((a, b) => Math.abs(Math.log(a.hz / usualHz)) - Math.abs(Math.log(b.hz / usualHz)));
  return { hz, tooSlow: hz < humanKickHz.low, better: fitting[0] ?? null };
}
