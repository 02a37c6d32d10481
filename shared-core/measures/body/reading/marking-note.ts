import type { EventKind } from '../../../marks/event-kind';
import { landmarkNames } from '../../../marks/landmark';
import type { ReadingNote } from '../../reading';
import type { BodyContext } from '../context/body-context';
import type { Measured } from './measured';
import { keptWith } from '../../../units/kept-with';

/** The kinds among a row of event ids: many readings share one row. */
const kindsAmong = keptWith((context: BodyContext) => {
  const byId = kindsById(context);
  return keptWith((ids: readonly string[]) => new Set(ids.flatMap((id) => byId.get(id) ?? [])));
});
const noIds: readonly string[] = [];

/**
 * Whether the marking error of the marks a reading used is assumed, partly so, or (null) all measured by the coach's own
 * re-marking. An instant that carries its own error, as accepted proposals do, needs neither.
 */
export function markingNote(
  context: BodyContext,
  { frames, landmarks, eventIds = noIds }: Pick<Measured, 'frames' | 'landmarks' | 'eventIds'>,
): Extract<ReadingNote, 'marking-error-assumed' | 'marking-error-part-assumed'> | null {
  const { basis, measured } = context.input.error;
  if (basis === 'assumed') return 'marking-error-assumed';
  const among = kindsAmong(context)(eventIds);
  let assumed = 0;
  let all = 0;
  for (const kind of among) {
    all += 1;
    if (!measured.events.includes(kind)) assumed += 1;
  }
  for (const name of frames.length > 0 ? (landmarks ?? landmarkNames) : []) {
    all += 1;
    if (!measured.landmarks.includes(name)) assumed += 1;
  }
  if (assumed === 0) return null;
  return assumed === all ? 'marking-error-assumed' : 'marking-error-part-assumed';
}

function kindsById(context: BodyContext): ReadonlyMap<string, EventKind> {
  return new Map(
    context.events.flatMap(({ event }) => (event.refined ? [] : [[event.id, event.kind] as const])),
  );
}
