import type { LockedMode } from '#core/compare/pair-clock';
import { pairWords } from '#core/words/pair';

const signed = (value: number, digits: number): string => {
  const text = Math.abs(value).toFixed(digits);
  return `${Number(text) === 0 ? '' : value < 0 ? '−' : '+'}${text}`;
};

/** A place on the pair's axis: "+0.383 s from the lock" or "+38 % of a stroke". */
export function placeWords(place: number, mode: LockedMode, cycle: 'stroke' | 'kick'): string {
  return mode === 'time'
    ? pairWords('sFromLock', { signed: signed(place, 3) })
    : pairWords('ofA', { signed: signed(100 * place, 0), cycle });
}

/** How much later one moment is than its like: "+34 ms", or "+3.1 %" of a cycle. */
export function laterWords(later: number, mode: LockedMode): string {
  return mode === 'time'
    ? pairWords('ms', { signed: signed(1000 * later, 0) })
    : `${signed(100 * later, 1)} %`;
}
