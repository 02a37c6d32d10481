import { useEffect, useMemo, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import type { Reading } from '#core/measures/reading';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import type { HostClient } from '../host/host-client';
import { background } from '../readings/window-background';

export type ReadSwim =
  | {
      readonly ok: true;
      readonly swim: Pick<Swim, 'id' | 'card'>;
      readonly readings: readonly Reading[];
    }
  | { readonly ok: false; readonly error: HostError };

export interface SwimReadings {
  readonly swims: ReadonlyMap<string, ReadSwim>;
  /** Swims still to be read. */
  readonly waiting: number;
}

/**
 * The readings of a trial's swims, each read and measured beside the window, once while the screen is open and again when
 * the window is come back to: what was read before stays until it is. `squad` null: it is not known yet, so that body
 * lengths and tables are not either; nothing is read until it is.
 */
export function useSwimReadings(
  host: HostClient,
  swimIds: readonly string[],
  squad: Squad | null,
): SwimReadings {
  const [swims, setSwims] = useState<ReadonlyMap<string, ReadSwim>>(new Map());
  const [stale, setStale] = useState<ReadonlySet<string>>(new Set());
  const wanted = useMemo(() => [...new Set(swimIds)].sort().join(' '), [swimIds]);
  const ids = wanted.split(' ').filter((id) => id !== '');
  const missing = ids.filter((id) => !swims.has(id));
  const next = squad ? (missing[0] ?? ids.find((id) => stale.has(id))) : undefined;
  useEffect(() => {
    const back = (): void => {
      if (document.visibilityState === 'visible') setStale(new Set(wanted.split(' ')));
    };
    document.addEventListener('visibilitychange', back);
    return () => document.removeEventListener('visibilitychange', back);
  }, [wanted]);
  useEffect(() => {
    if (next === undefined || !squad) return;
    const leaving = new AbortController();
    void readSwim(host, next, squad, leaving.signal).then((read) => {
      if (leaving.signal.aborted || !read) return;
      setSwims((before) => new Map([...before, [next, read]]));
      setStale((before) => new Set([...before].filter((id) => id !== next)));
    });
    return () => leaving.abort();
  }, [host, next, squad]);
  return { swims, waiting: missing.length };
}

/** Null where the signal was aborted. */
async function readSwim(
  host: HostClient,
  id: string,
  squad: Squad,
  signal: AbortSignal,
): Promise<ReadSwim | null> {
  const read = await host.call('swim/read', { id }, signal);
  if (!read.ok) return { ok: false, error: read.error };
  const coach = await host.call('coach/read', {}, signal);
  const { swim } = read.value;
  const swimmer = squad.swimmers.find((each) => each.id === swim.card.swimmerId) ?? null;
  const markingError = coach.ok ? coachMarkingError(coach.value.coach, swim.clip.height) : null;
  const readings = await background.ask('readings', { swim, swimmer, markingError }, signal);
  return readings && { ok: true, swim: { id: swim.id, card: swim.card }, readings };
}
