import type { ComputedReading, Reading } from '../measures/reading';
import { isUnreviewed } from '../measures/seen-readings';
import type { Swim, SwimCard } from '../swim-file/swim-schema';
import type { Drill } from './drill-schema';
import { type Work, workOfCard } from './work';

/** One swim as the season sees it. */
export interface SeasonSwim {
  readonly swimId: string;
  readonly swimmerId: string | null;
  /** ISO day. */
  readonly day: string;
  readonly view: SwimCard['view'];
  readonly work: Work;
  readonly effort: SwimCard['effort'];
  readonly readings: ReadonlyMap<string, ComputedReading>;
}

/** A swim and its readings for the season; those that could not be computed are left out. `own`: the coach's drills. */
export function seasonSwim(
  swim: Pick<Swim, 'id' | 'card'>,
  readings: readonly Reading[],
  own: readonly Drill[],
): SeasonSwim {
  return {
    swimId: swim.id,
    swimmerId: swim.card.swimmerId,
    day: swim.card.date,
    view: swim.card.view,
    work: workOfCard(swim.card, own),
    effort: swim.card.effort,
    readings: new Map(
      readings.flatMap((each) =>
        each.status === 'computed' && !isUnreviewed(each) ? [[each.id, each] as const] : [],
      ),
    ),
  };
}
