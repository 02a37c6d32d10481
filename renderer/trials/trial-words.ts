import { drillById } from '#core/practice/drill-library';
import type { Drill } from '#core/practice/drill-schema';
import { workPhrase } from '#core/practice/item-phrase';
import type { TrialFactor, TrialRow, TrialValue } from '#core/practice/trial-row';
import type { Doubted } from '#core/measures/doubtful';
import type { ReadingUnit } from '#core/measures/reading';
import type { Squad } from '#core/swim-file/squad-schema';
import type { SwimCard } from '#core/swim-file/swim-schema';
import { aidWords, armWords, conditionWords, sideWords } from '#core/swim-file/card-words';
import { sentence } from '../card/sentence';
import { formatReading, readingLine } from '#core/measures/format-reading';
import { trialsWords } from '#core/words/trials';

const plainFactors = {
  head: trialsWords('headPosition'),
  hips: trialsWords('hipPosition'),
  depth: 'depth',
  arms: 'arms',
  sideUp: trialsWords('sideUp'),
  drill: 'drill',
  aids: 'aids',
} as const;
export type PlainFactor = keyof typeof plainFactors;
export const factorNames = Object.keys(plainFactors) as readonly PlainFactor[];

export function factorWords(factor: TrialFactor): string {
  return factor.of === 'tag' ? trialsWords('tagTag', { tag: factor.tag }) : plainFactors[factor.of];
}

/** A level of the factor as the coach says it. */
export function levelWords(factor: TrialFactor, level: string, own: readonly Drill[]): string {
  switch (factor.of) {
    case 'head':
    case 'hips':
    case 'depth':
      return conditionWords(factor.of, level);
    case 'arms':
      return armWords[level as SwimCard['arms']] ?? level;
    case 'sideUp':
      return sideWords[level as SwimCard['sideUp']] ?? level;
    case 'drill':
      return level === 'plain' ? trialsWords('plainStroke') : (drillById(level, own)?.name ?? level);
    case 'aids':
      return level === 'none'
        ? trialsWords('withoutAids')
        : level
            .split('+')
            .map((aid) => aidWords[aid as SwimCard['aids'][number]] ?? aid)
            .join(' and ');
    case 'tag':
      return level;
  }
}

/** Whose repeats these are and how they were swum: what is held against each other is alike in this. */
export function poolWords(row: TrialRow, squad: Squad, own: readonly Drill[]): string {
  const name = squad.swimmers.find(({ id }) => id === row.swimmerId)?.name ?? trialsWords('notNamed');
  return `${name}: ${workPhrase(row.work, drillById(row.work.drill, own)?.name ?? null)}`;
}

const normal975 = 1.959964;

/** A value with half of its 95 % interval from marking: "1.24 ± 0.05 m/s". */
export function valueWords(id: string, { value, unit, ownVariance, notes, doubts }: TrialValue): string {
  const half = normal975 * Math.sqrt(ownVariance);
  return readingLine(
    formatReading({ id, value, unit, interval: { low: value - half, high: value + half }, notes, doubts }, 2),
  );
}

/** A difference with both ends of its interval: "+0.12 (+0.03 to +0.21) m/s". */
export function differenceWords(
  difference: number,
  low: number,
  high: number,
  unit: ReadingUnit,
  doubted: Doubted,
): string {
  const half = (high - low) / 2;
  const text = formatReading({ id: '', value: difference, unit, interval: { low, high }, ...doubted }, 2);
  const doubtful = text.doubtful ? ', doubtful' : '';
  const digits = text.value.split('.')[1]?.length ?? 0;
  const signed = (value: number): string => {
    const plain = Math.abs(value).toFixed(digits);
    return Number(plain) === 0 ? plain : `${value < 0 ? '−' : '+'}${plain}`;
  };
  if (!(half > 0)) return `${signed(difference)} ${text.unit}`.trim() + doubtful;
  return (
    trialsWords('to', {
      signed: signed(difference),
      signed2: signed(low),
      signed3: signed(high),
      unit: text.unit,
    }).trim() + doubtful
  );
}

export const trialTitle = (title: string): string => title.trim() || trialsWords('trialWithoutTitle');

export function repeatsWords(
  more: { readonly first: number; readonly second: number } | null,
  first: string,
  second: string,
): string {
  if (more === null) return trialsWords('moreThan200Each');
  if (more.first + more.second === 0) return trialsWords('noMoreNeeded');
  const parts = [
    more.first > 0 ? trialsWords('more', { first: more.first, first2: first }) : '',
    more.second > 0 ? trialsWords('moreSecond', { second: more.second, second2: second }) : '',
  ];
  return sentence(`${parts.filter(Boolean).join(' and ')}.`);
}
