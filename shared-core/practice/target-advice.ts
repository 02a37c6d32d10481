import type { SwimCard } from '../swim-file/swim-schema';

/** A band to begin from, with where it is from; never set without the coach saying so. */
export interface TargetAdvice {
  readonly low: number | null;
  readonly high: number | null;
  readonly why: string;
}

const practice = 'common practice, no source';

/**
 * The few bands that can be offered for a reading: those the coaching trade states with a number. Null for all others:
 * no norms are shipped. The unit is the reading's own.
 */
export function targetAdvice(reading: string, card: Pick<SwimCard, 'arms' | 'sideUp'>): TargetAdvice | null {
  const stretched = card.arms === 'stretched' || card.arms === 'overlapped';
  if (/^head-offset/.test(reading) && stretched)
    return { low: null, high: 0, why: `the head slightly below the arms in streamline: ${practice}` };
  if (reading === 'foot-speed-over-swim')
    return { low: 1, high: null, why: `the feet move down faster than the swimmer moves on: ${practice}` };
  if (/^knee-to-surface/.test(reading) && card.sideUp === 'back')
    return { low: null, high: 0, why: `on the back the knees stay under water: ${practice}` };
  return null;
}
