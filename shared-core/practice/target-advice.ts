import type { SwimCard } from '../swim-file/swim-schema';
import { practiceWords } from '../words/practice';

/** A band to begin from, with where it is from; never set without the coach saying so. */
export interface TargetAdvice {
  readonly low: number | null;
  readonly high: number | null;
  readonly why: string;
}

const practice = practiceWords('commonPracticeNo');

/**
 * The few bands that can be offered for a reading: those the coaching trade states with a number. Null for all others:
 * no norms are shipped. The unit is the reading's own.
 */
export function targetAdvice(reading: string, card: Pick<SwimCard, 'arms' | 'sideUp'>): TargetAdvice | null {
  const stretched = card.arms === 'stretched' || card.arms === 'overlapped';
  if (/^head-offset/.test(reading) && stretched)
    return { low: null, high: 0, why: practiceWords('headSlightlyBelow', { practice }) };
  if (reading === 'foot-speed-over-swim')
    return { low: 1, high: null, why: practiceWords('feetMoveDown', { practice }) };
  if (/^knee-to-surface/.test(reading) && card.sideUp === 'back')
    return { low: null, high: 0, why: practiceWords('backKneesStay', { practice }) };
  return null;
}
