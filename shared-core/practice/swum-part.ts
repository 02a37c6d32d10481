import type { LogEntry, Practice, PracticeItem } from './practice-schema';
import { patternPasses, patternStrokes } from './stroke-pattern';
import { type PlannedRepeat, unfoldItem } from './unfold-item';
import { isOneArm, type Work, workOfItem, workOfKickBetween } from './work';

/** A stretch of water swum (or to be swum) in one way: what every total is a sum of. */
export interface SwumPart {
  readonly itemId: string;
  /** Day of the practice. */
  readonly date: string;
  readonly kind: 'repeat' | 'kick-between';
  readonly work: Work;
  readonly metres: number;
  /** Strokes of the right and the left arm alone; null when the arm swims alone and nobody said how often. */
  readonly oneArm: { readonly right: number; readonly left: number } | null;
}

/** Planned: what stands on the card. Logged: only repeats that have an entry. */
export type Basis = 'planned' | 'logged';

/**
 * The parts of a practice. `swimmerId` null: every item once, whoever swims it, which is the practice as the card
 * reads. An entry that names nobody counts for a swimmer only when the practice has no other. Kick between two logged
 * repeats counts as swum.
 */
export function swumParts(practice: Practice, swimmerId: string | null, basis: Basis): readonly SwumPart[] {
  return practice.items
    .filter((item) => swims(practice, item, swimmerId))
    .flatMap((item) => partsOfItem(practice, item, swimmerId, basis));
}

/** Parts of one item; see `swumParts`. */
function partsOfItem(
  practice: Practice,
  item: PracticeItem,
  swimmerId: string | null,
  basis: Basis,
): readonly SwumPart[] {
  const entries = new Map<number, LogEntry>();
  for (const entry of practice.log)
    if (entry.itemId === item.id && isOf(practice, entry, swimmerId)) entries.set(entry.repeat, entry);
  const done = (repeat: number): boolean => basis === 'planned' || entries.has(repeat);
  return unfoldItem(item).flatMap((planned): SwumPart[] => {
    if (!done(planned.repeat)) return [];
    const entry = basis === 'logged' ? entries.get(planned.repeat) : undefined;
    const parts: SwumPart[] = [
      {
        itemId: item.id,
        date: practice.date,
        kind: 'repeat',
        work: workOfItem(item),
        metres: planned.distanceMetres,
        oneArm: oneArmStrokes(item, planned, entry?.count ?? null),
      },
    ];
    if (item.kickBetween && planned.kickMetresAfter > 0 && done(planned.repeat + 1))
      parts.push({
        itemId: item.id,
        date: practice.date,
        kind: 'kick-between',
        work: workOfKickBetween(item.kickBetween),
        metres: planned.kickMetresAfter,
        oneArm: { right: 0, left: 0 },
      });
    return parts;
  });
}

/** Whether a swimmer has an item on the card; null: always. */
function swims(practice: Practice, item: PracticeItem, swimmerId: string | null): boolean {
  return swimmerId === null || (item.swimmerIds ?? practice.swimmerIds).includes(swimmerId);
}

function isOf(practice: Practice, entry: LogEntry, swimmerId: string | null): boolean {
  if (swimmerId === null || entry.swimmerId === swimmerId) return true;
  return entry.swimmerId === null && practice.swimmerIds.length === 1 && practice.swimmerIds[0] === swimmerId;
}

/** Entries whose item or repeat is no longer on the card: kept in the file, in no total. */
export function danglingEntries(practice: Practice): readonly LogEntry[] {
  const repeats = new Map(practice.items.map((item) => [item.id, unfoldItem(item).length]));
  return practice.log.filter(({ itemId, repeat }) => repeat >= (repeats.get(itemId) ?? 0));
}

function oneArmStrokes(
  item: PracticeItem,
  planned: PlannedRepeat,
  logged: number | null,
): SwumPart['oneArm'] {
  if (planned.pattern) {
    const { right, left } = patternStrokes(planned.pattern.runs);
    const passes = patternPasses(planned.pattern, planned.distanceMetres);
    if (passes !== null) return { right: right * passes, left: left * passes };
    return right + left === 0 ? { right: 0, left: 0 } : null;
  }
  if (!isOneArm(item.arms)) return { right: 0, left: 0 };
  const count = logged ?? planned.count;
  if (count === null) return null;
  if (item.arms === 'one-arm-right') return { right: count, left: 0 };
  if (item.arms === 'one-arm-left') return { right: 0, left: count };
  // an odd count alternating leaves one arm a stroke ahead; which one isn't known, so it is shared
  return { right: count / 2, left: count / 2 };
}
