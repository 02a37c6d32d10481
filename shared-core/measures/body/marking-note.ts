import type { EventKind } from '../../marks/event-kind';
import { landmarkNames } from '../../marks/landmark';
import type { ReadingNote } from '../reading';
import type { BodyContext } from './body-context';
import type { Measured } from './measured-reading';

/** Kinds by event id, and the kinds among rows of ids: many readings share one row. */
interface Kinds {
  readonly byId: ReadonlyMap<string, EventKind>;
  readonly among: WeakMap<readonly string[], ReadonlySet<EventKind>>;
}

const kinds = new WeakMap<BodyContext, Kinds>();
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
  const known = kinds.get(context) ?? { byId: kindsById(context), among: new WeakMap() };
  kinds.set(context, known);
  const among = known.among.get(eventIds) ?? new Set(eventIds.flatMap((id) => known.byId.get(id) ?? []));
  known.among.set(eventIds, among);
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
