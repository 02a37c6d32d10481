import type { CoachFile } from '../swim-file/coach-file';
import type { Swim } from '../swim-file/swim-schema';
import type { MarkingError } from '../uncertainty/marking-error';
import type { ComputedReading } from './reading';
import { readingLandmarks } from './reading-landmarks';
import { measuresWords } from '../words/measures';

/** What a reading's marking error rests on: how many pairs of the coach's own, and whether all, part or none of it. */
export interface MarkingBasis {
  readonly from: 'measured' | 'part' | 'assumed';
  /** Marks made again that went in: one for an event, one for a point (its two directions count once). */
  readonly remarkings: number;
}

/** Which re-markings stand behind a reading's interval. Nothing measured, or nobody's file known: assumed. */
export function markingBasis(
  reading: ComputedReading,
  swim: Pick<Swim, 'events'>,
  coach: CoachFile | null,
  error: MarkingError | null,
): MarkingBasis {
  const { notes, from } = reading;
  if (!coach || !error || notes.includes('marking-error-assumed')) return { from: 'assumed', remarkings: 0 };
  const ids = new Set(from.eventIds);
  const kinds = new Set(swim.events.flatMap(({ id, kind }) => (ids.has(id) ? [kind] : [])));
  const events = error.measured.events.filter((kind) => kinds.has(kind));
  const points = from.postureFrames.length > 0 ? readingLandmarks(reading.id) : [];
  const landmarks = error.measured.landmarks.filter((name) => points.includes(name));
  const followed = error.measured.followed.filter((name) => points.includes(name));
  const remarkings = coach.remarkings.filter(({ item, axis, of }) => {
    if (axis === 'time') return events.some((kind) => kind === item);
    if (axis === 'y') return false;
    return (of === 'followed' ? followed : landmarks).some((name) => name === item);
  }).length;
  return { from: notes.includes('marking-error-part-assumed') ? 'part' : 'measured', remarkings };
}

/** The basis in words, for the middle of a sentence. */
export function basisWords({ from, remarkings }: MarkingBasis): string {
  const counted = measuresWords('reMarkings', { remarkings });
  if (from === 'measured')
    return remarkings > 0 ? measuresWords('measured', { counted }) : measuresWords('measured2');
  return from === 'part' ? measuresWords('partlyMeasuredRest', { counted }) : measuresWords('assumed');
}
