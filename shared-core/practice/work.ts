import type { z } from 'zod';
import type { SwimCard } from '../swim-file/swim-schema';
import { drillLibrary } from './drill-library';
import type { Drill } from './drill-schema';
import type { kickBetweenSchema, PracticeItem } from './practice-schema';

type Arms = SwimCard['arms'];
type Aid = SwimCard['aids'][number];

/** What is swum and how, apart from distance and effort. Two stretches are alike when their works are. */
export interface Work {
  readonly stroke: PracticeItem['stroke'];
  /** Id of a drill, or the coach's words when they name none, or empty for the plain stroke. */
  readonly drill: string;
  readonly arms: Arms;
  readonly sideUp: SwimCard['sideUp'];
  readonly aids: readonly Aid[];
}

/** The work of an item's repeats; words that name a drill of the library count as that drill. */
export function workOfItem(item: PracticeItem): Work {
  return {
    stroke: item.stroke,
    drill: item.drillId ?? drillKey(item.words, []),
    arms: item.arms,
    sideUp: item.sideUp,
    aids: item.aids,
  };
}

/** The work of the kick between repeats: plain dolphin kick. */
export function workOfKickBetween(kick: z.infer<typeof kickBetweenSchema>): Work {
  return { stroke: 'dolphin-kick', drill: '', arms: kick.arms, sideUp: kick.sideUp, aids: kick.aids };
}

/** `own`: the coach's drills, so that a card that names one in words is like a practice that picked it. */
export function workOfCard(card: SwimCard, own: readonly Drill[] = []): Work {
  return {
    stroke: card.stroke,
    drill: drillKey(card.drill, own),
    arms: card.arms,
    sideUp: card.sideUp,
    aids: card.aids,
  };
}

/** Id of the drill that the words name; else the words, in which case and spaces make no difference. */
function drillKey(words: string, own: readonly Drill[]): string {
  const said = plain(words);
  const named = [...own, ...drillLibrary].find(({ id, name }) => plain(name) === said || id === said);
  return named?.id ?? said;
}

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

/** True for every position in which one arm strokes alone. */
export function isOneArm(arms: Arms): boolean {
  return arms === 'one-arm-left' || arms === 'one-arm-right' || arms === 'one-arm-alternating';
}
