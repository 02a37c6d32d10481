import type { z } from 'zod';
import type { SwimCard } from '../swim-file/swim-schema';
import type { kickBetweenSchema, PracticeItem } from './practice-schema';

type Arms = SwimCard['arms'];
type Aid = SwimCard['aids'][number];

/** What is swum and how, apart from distance and effort. Two stretches are alike when their works are. */
export interface Work {
  readonly stroke: PracticeItem['stroke'];
  /** Drill id of the library, or the coach's words, or empty for the plain stroke. */
  readonly drill: string;
  readonly arms: Arms;
  readonly sideUp: SwimCard['sideUp'];
  readonly aids: readonly Aid[];
}

export function workOfItem(item: PracticeItem): Work {
  return {
    stroke: item.stroke,
    drill: item.drillId ?? plain(item.words),
    arms: item.arms,
    sideUp: item.sideUp,
    aids: item.aids,
  };
}

export function workOfKickBetween(kick: z.infer<typeof kickBetweenSchema>): Work {
  return { stroke: 'dolphin-kick', drill: '', arms: kick.arms, sideUp: kick.sideUp, aids: kick.aids };
}

export function workOfCard(card: SwimCard): Work {
  return {
    stroke: card.stroke,
    drill: plain(card.drill),
    arms: card.arms,
    sideUp: card.sideUp,
    aids: card.aids,
  };
}

/** Drill words that differ only in case and spaces are one drill. */
function plain(words: string): string {
  return words.trim().replace(/\s+/g, ' ').toLowerCase();
}

/** Aids in a fixed order, joined; empty without any. Swims with different keys are never pooled. */
export function aidsKey(aids: readonly Aid[]): string {
  return [...aids].sort().join('+');
}

/** One text per way of swimming without its aids: what aided metres are to be matched in. */
export function workKey(work: Work): string {
  return [work.stroke, work.drill, work.arms, work.sideUp].join('|');
}

/** One text per way of swimming, aids and all: only swims of one key are like. */
export function likeKey(work: Work): string {
  return `${workKey(work)}|${aidsKey(work.aids)}`;
}

export function isOneArm(arms: Arms): boolean {
  return arms === 'one-arm-left' || arms === 'one-arm-right' || arms === 'one-arm-alternating';
}
