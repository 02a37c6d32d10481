import type { Swimmer } from '../swim-file/squad-schema';
import { targetInForce } from '../swim-file/target-in-force';
import { measuresWords } from '../words/measures';

export interface TargetMark {
  readonly met: 'yes' | 'no' | 'unsure';
  readonly words: string;
  readonly band: string;
}

/** Words of a band the coach set, either end open: "0.40 to 0.50", "at most 30", "at least 2". */
export function bandWords(low: number | null, high: number | null): string {
  if (low !== null && high !== null)
    return measuresWords('toPlain', { plain: plain(low), plain2: plain(high) });
  if (high !== null) return measuresWords('atMost', { plain: plain(high) });
  return low === null ? measuresWords('any') : measuresWords('atLeast', { plain: plain(low) });
}

const plain = (value: number): string => String(value).replace('-', '−');

/**
 * Whether a value meets the swimmer's own target; null when the coach set none. With an interval, "unsure" when it
 * reaches across an end of the band: the marks can't tell.
 */
export function targetMark(
  swimmer: Swimmer | null,
  reading: string,
  value: number,
  interval?: { readonly low: number; readonly high: number },
): TargetMark | null {
  const target = swimmer && targetInForce(swimmer, reading);
  if (!target) return null;
  const low = target.low ?? Number.NEGATIVE_INFINITY;
  const high = target.high ?? Number.POSITIVE_INFINITY;
  const inside = (at: number): boolean => at >= low && at <= high;
  const band = bandWords(target.low, target.high);
  const { low: least, high: most } = interval ?? { low: value, high: value };
  const apart = most < low || least > high;
  if (!apart && !(inside(least) && inside(most)))
    return { met: 'unsure', band, words: measuresWords('mayOrMayNotMeet', { band }) };
  return inside(value)
    ? { met: 'yes', band, words: measuresWords('meetsTarget', { band }) }
    : { met: 'no', band, words: measuresWords('missesTarget', { band }) };
}
