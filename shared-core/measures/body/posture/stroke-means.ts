import type { EventKind } from '../../../marks/event-kind';
import { firstAtOrAfter } from '../../../signal/first-at-or-after';
import { strokesOf } from '../../events/strokes';
import type { BodyContext } from '../context/body-context';
import type { TimedEvent } from '../../timed-event';
import { keptWith } from '../../../units/kept-with';

type KickEnd = Extract<EventKind, 'kick-top' | 'kick-bottom'>;

/**
 * Means over the kicks of each stroke, of values read on frames of kick tops or of kick bottoms. The kicks of one stroke
 * differ from each other always in the same way, and are big or small together: what differs by chance is the strokes.
 *
 * @param frames on which there is a value, rising, each once; `readAt` gives it by its place in them
 * @returns null where no strokes are marked, so that each kick stands for itself; none where a kick of some stroke was not
 *   read or stands outside the strokes, so that the mean of all is not that of the strokes
 */
export function strokeMeans(
  { events }: BodyContext,
  kind: KickEnd,
  frames: readonly number[],
  readAt: (place: number) => number,
): readonly number[] | null {
  const strokes = kickFrames(events, kind);
  if (!strokes) return null;
  const kicks = strokes[0]?.length ?? 0;
  if (kicks * strokes.length !== frames.length) return [];
  const means: number[] = [];
  for (const stroke of strokes) {
    let sum = 0;
    for (const frame of stroke) {
      const place = firstAtOrAfter(frames, frame);
      if (frames[place] !== frame) return [];
      sum += readAt(place);
    }
    means.push(sum / kicks);
  }
  return means;
}

const kept = keptWith(
  (_: readonly TimedEvent[]) => new Map<KickEnd, readonly (readonly number[])[] | null>(),
);

/** Frames of that end of the kicks, stroke by stroke; no strokes where they have not as many kicks each, all marked. */
function kickFrames(events: readonly TimedEvent[], kind: KickEnd): readonly (readonly number[])[] | null {
  const known = kept(events);
  const found = known.get(kind);
  if (found !== undefined) return found;
  const strokes = strokesOf(events);
  const rows = strokes.map(({ kicks }) =>
    kicks.flatMap((kick) => (kind === 'kick-top' ? kick.top : kick.bottom)?.event.frame ?? []),
  );
  const count = rows[0]?.length ?? 0;
  const even = rows.every((row, i) => row.length === count && strokes[i]?.kicks.length === count);
  const made = strokes.length === 0 ? null : even && count > 0 ? rows : [];
  known.set(kind, made);
  return made;
}
