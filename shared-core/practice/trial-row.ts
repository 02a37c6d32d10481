import type { Doubted } from '../measures/doubtful';
import type { Reading, ReadingUnit } from '../measures/reading';
import { isUnreviewed } from '../measures/seen-readings';
import type { Swim } from '../swim-file/swim-schema';
import { type ConditionTags, depths, headPositions, hipPositions } from '../swim-file/condition-tags';
import { aidsKey, type Work, workOfCard } from './work';
import { trialWarningsWords } from '../words/trial-warnings';

export interface TrialValue extends Doubted {
  readonly value: number;
  readonly unit: ReadingUnit;
  /** Variance from marking this one swim, unit²; the scale's share, common to one set-up, is not in it. */
  readonly ownVariance: number;
}

/** One repeat of a trial: a swim under its conditions, with its readings. */
export interface TrialRow {
  readonly swimId: string;
  readonly swimmerId: string | null;
  /** ISO day. */
  readonly day: string;
  /** Place in the order swum that day; the smaller first. */
  readonly order: number;
  readonly work: Work;
  readonly tags: ConditionTags;
  /** Kick cycles the readings rest on; null when no kicks are marked. */
  readonly kickCycles: number | null;
  readonly values: ReadonlyMap<string, TrialValue>;
}

/** What conditions can be told apart by. A free tag is either there or not. */
export type TrialFactor =
  | { readonly of: 'arms' | 'sideUp' | 'drill' | 'aids' | 'head' | 'hips' | 'depth' }
  | { readonly of: 'tag'; readonly tag: string };

/** A repeat from a swim and its readings; those that could not be computed are left out. */
export function trialRow(
  swim: Pick<Swim, 'id' | 'card'>,
  order: number,
  tags: ConditionTags,
  readings: readonly Reading[],
): TrialRow {
  // numbers nobody has reviewed decide nothing
  const computed = readings.flatMap((each) =>
    each.status === 'computed' && !isUnreviewed(each) ? [each] : [],
  );
  return {
    swimId: swim.id,
    swimmerId: swim.card.swimmerId,
    day: swim.card.date,
    order,
    work: workOfCard(swim.card),
    tags,
    kickCycles: computed.find(({ id }) => id === 'kick-frequency')?.cycles ?? null,
    values: new Map(
      computed.map(({ id, value, unit, ownVariance, notes, doubts }) => [
        id,
        { value, unit, ownVariance, notes, doubts },
      ]),
    ),
  };
}

/** The level of a factor that a repeat was swum at; null when nobody said. "none" is bare, without any aid. */
export function levelOf(row: TrialRow, factor: TrialFactor): string | null {
  switch (factor.of) {
    case 'arms':
    case 'sideUp':
      return row.work[factor.of];
    case 'drill':
      return row.work.drill === '' ? 'plain' : row.work.drill;
    case 'aids':
      return aidsKey(row.work.aids) || 'none';
    case 'head':
    case 'hips':
    case 'depth':
      return row.tags[factor.of];
    case 'tag':
      return row.tags.free.includes(factor.tag) ? factor.tag : trialWarningsWords('not', { tag: factor.tag });
  }
}

/**
 * Repeats with one text of these may be held against each other: same swimmer, same stroke, drill, arms, side and aids,
 * but for the factor itself. Aided and unaided repeats so never share one, unless the aids are what is asked about.
 */
export function poolOf(row: TrialRow, factor: TrialFactor): string {
  const { stroke, drill, arms, sideUp, aids } = row.work;
  const fields = { stroke, drill, arms, sideUp, aids: aidsKey(aids) };
  return JSON.stringify([row.swimmerId, { ...fields, ...(factor.of in fields ? { [factor.of]: '*' } : {}) }]);
}

const orders: Readonly<Record<string, readonly string[]>> = {
  head: headPositions,
  hips: hipPositions,
  depth: depths,
};

/** Levels in a fixed order that has nothing to do with the result: low to high, else by name. */
export function sortedLevels(levels: Iterable<string>, factor: TrialFactor): readonly string[] {
  const order = orders[factor.of] ?? [];
  return [...new Set(levels)].sort(
    (a, b) => order.indexOf(a) - order.indexOf(b) || (a < b ? -1 : a > b ? 1 : 0),
  );
}
