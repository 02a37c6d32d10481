import type { EventKind } from '../../marks/event-kind';
import type { TimedEvent } from '../timed-event';
import { longestCounted } from './count-cycles';
import { eventsOf } from './event-list';

const others = ['catch', 'shoulder', 'navel', 'exit'] as const satisfies readonly EventKind[];

/** Gaps between neighbours that are short enough to be counted in whole strokes. */
const counted = (row: readonly TimedEvent[], typical: number): number =>
  row.slice(1).filter(({ time }, i) => time - (row[i]?.time ?? time) <= longestCounted * typical).length;

/**
 * The marks of the hands that strokes go by: their entries, or where too few of these are marked to count strokes by, the kind
 * of which most are. Every kind comes once a stroke.
 *
 * @param typical usual length of a stroke, seconds
 */
export function strokeRow(events: readonly TimedEvent[], typical = Infinity): readonly TimedEvent[] {
  const entries = eventsOf(events, 'entry');
  if (counted(entries, typical) > 0) return entries;
  const rows = others.map((kind) => eventsOf(events, kind));
  const most = rows.reduce((a, b) => (counted(b, typical) > counted(a, typical) ? b : a));
  return counted(most, typical) > 0 ? most : entries;
}
