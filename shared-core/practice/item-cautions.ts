import { type CautionCode, underwaterCautions } from './caution';
import type { Drill } from './drill-schema';
import type { PracticeItem } from './practice-schema';
import { practiceWords } from '../words/practice';

/** Something on the card to mend before it is swum; closed. */
export type PlanWarning =
  /** An underwater item has several repeats and neither rest nor send-off written down. */
  | { readonly code: 'underwater-without-pause' }
  /** The drill goes under water and the item does not say so. */
  | { readonly code: 'underwater-not-said' };

export interface ItemCautions {
  readonly cautions: readonly CautionCode[];
  readonly warnings: readonly PlanWarning[];
}

/** What stands beside an item on the card: its own cautions and its drill's, each once. `drill`: null when unknown. */
export function itemCautions(item: PracticeItem, drill: Drill | null): ItemCautions {
  const underwater = item.underwater || drill?.underwater === true;
  const back = item.sideUp === 'back' || item.kickBetween?.sideUp === 'back';
  const codes = new Set<CautionCode>(underwater ? underwaterCautions : []);
  if (back) codes.add('on-the-back-wall');
  for (const code of drill?.cautions ?? []) codes.add(code);
  const warnings: PlanWarning[] = [];
  if (underwater && item.repeats * (item.ladder?.rungs.length ?? 1) > 1 && !item.pause)
    warnings.push({ code: 'underwater-without-pause' });
  if (drill?.underwater && !item.underwater) warnings.push({ code: 'underwater-not-said' });
  return { cautions: [...codes], warnings };
}

/** A warning in words for the coach. */
export function planWarningWords(warning: PlanWarning): string {
  switch (warning.code) {
    case 'underwater-without-pause':
      return practiceWords('writeDownRest');
    case 'underwater-not-said':
      return practiceWords('drillGoesUnder');
  }
}
