import type { Practice, PracticeItem } from './practice-schema';
import { unfoldItem } from './unfold-item';

/** Seconds for 100 m, for repeats nobody has timed. */
export interface Pace {
  readonly swim: number;
  readonly kick: number;
}

/** Our defaults, no source; the coach sets the squad's own. */
export const assumedPace: Pace = { swim: 110, kick: 150 };

export interface TimeEstimate {
  readonly seconds: number;
  /** Part of it that rests on the pace instead of on a send-off or a rest. */
  readonly fromPaceSeconds: number;
  /** Items whose send-off is shorter than their swim and kick at this pace. */
  readonly tightItemIds: readonly string[];
}

/**
 * Time a practice takes. A send-off is taken as it stands, the last one too; a rest follows every repeat, the last one
 * too, as another item is next. Items without either take their swimming only. An empty practice takes 0 s.
 */
export function practiceTime(practice: Pick<Practice, 'items'>, pace: Pace): TimeEstimate {
  const items = practice.items.map((item) => ({ item, ...itemTime(item, pace) }));
  return {
    seconds: items.reduce((sum, { seconds }) => sum + seconds, 0),
    fromPaceSeconds: items.reduce((sum, { fromPaceSeconds }) => sum + fromPaceSeconds, 0),
    tightItemIds: items.filter(({ tight }) => tight).map(({ item }) => item.id),
  };
}

function itemTime(
  item: PracticeItem,
  pace: Pace,
): { seconds: number; fromPaceSeconds: number; tight: boolean } {
  let seconds = 0;
  let fromPaceSeconds = 0;
  let tight = false;
  const per100 = item.stroke === 'dolphin-kick' ? pace.kick : pace.swim;
  for (const { distanceMetres, kickMetresAfter } of unfoldItem(item)) {
    const swum = (distanceMetres * per100 + kickMetresAfter * pace.kick) / 100;
    if (item.pause?.kind === 'send-off') {
      seconds += item.pause.seconds;
      tight ||= swum > item.pause.seconds;
    } else {
      seconds += swum + (item.pause?.seconds ?? 0);
      fromPaceSeconds += swum;
    }
  }
  return { seconds, fromPaceSeconds, tight };
}
