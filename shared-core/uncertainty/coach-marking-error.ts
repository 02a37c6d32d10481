import { eventKinds } from '../marks/event-kind';
import { landmarkNames } from '../marks/landmark';
import type { CoachFile } from '../swim-file/coach-file';
import { assumedMarkingError } from './assumed-marking-error';
import type { MarkingError } from './marking-error';
import { markingErrorFromRemarkings, type Remarking, type Repeatability, repeatability } from './remarking';

type Entry = CoachFile['remarkings'][number];

/**
 * The coach's marking error for a clip, from all re-markings kept: measured kind by kind and landmark by landmark where
 * there are ten pairs or more, assumed elsewhere (`measured` says which). Errors of points are kept as shares of the
 * picture's height, so pixels of a clip of another size are scaled to this one; entries that don't say their picture's
 * height count as they are.
 *
 * @param pictureHeight pixels of the shown picture of the clip to be read
 */
export function coachMarkingError(coach: CoachFile, pictureHeight: number): MarkingError {
  const entries = coach.remarkings.flatMap((entry) => remarkingOf(entry, pictureHeight) ?? []);
  return markingErrorFromRemarkings(entries, assumedMarkingError(pictureHeight));
}

/** How well the coach repeats one kind of mark, in seconds or in pixels of a picture of the height asked for. */
export interface CoachRepeatability {
  /** Kind of event, or name of the landmark. */
  readonly item: string;
  readonly axis: Entry['axis'];
  readonly of: Entry['of'];
  /** Null with fewer than two pairs. */
  readonly found: Repeatability | null;
  readonly pairs: number;
}

/** Typical error, bias and least real change for every kind, axis and sort of mark that was re-marked; events first. */
export function coachRepeatability(coach: CoachFile, pictureHeight: number): readonly CoachRepeatability[] {
  const kinds = [
    ...eventKinds.map((item) => ({ item, axes: ['time'] as const })),
    ...landmarkNames.map((item) => ({ item, axes: ['x', 'y'] as const })),
  ];
  return kinds.flatMap(({ item, axes }) =>
    axes.flatMap((axis) =>
      (['marked', 'followed'] as const).flatMap((of): CoachRepeatability[] => {
        const own = coach.remarkings.filter(
          (each) => each.item === item && each.of === of && each.axis === axis,
        );
        const pairs = own.map((each) => ({ first: 0, second: difference(each, pictureHeight) }));
        return own.length > 0 ? [{ item, axis, of, found: repeatability(pairs), pairs: own.length }] : [];
      }),
    ),
  );
}

/** One kept entry as a pair; null when this build does not know what it is of. */
function remarkingOf(entry: Entry, pictureHeight: number): Remarking | null {
  const pair = { first: 0, second: difference(entry, pictureHeight) };
  if (entry.axis === 'time') {
    // without its frame interval nothing is known of the rounding, and nothing is taken off
    const kind = eventKinds.find((name) => name === entry.item);
    return kind ? { ...pair, of: 'event', kind, frameInterval: entry.frameSeconds ?? 0 } : null;
  }
  const landmark = landmarkNames.find((name) => name === entry.item);
  return landmark
    ? { ...pair, of: entry.of === 'followed' ? 'followed' : 'landmark', landmark, axis: entry.axis }
    : null;
}

function difference(entry: Entry, pictureHeight: number): number {
  const scale = entry.axis !== 'time' && entry.pictureHeight ? pictureHeight / entry.pictureHeight : 1;
  return entry.difference * scale;
}
