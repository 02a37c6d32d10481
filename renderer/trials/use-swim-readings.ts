import { useEffect, useMemo, useState } from 'react';
import type { HostError } from '#core/host-contract/host-error';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import type { Reading } from '#core/measures/reading';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import type { HostClient } from '../host/host-client';

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
 * The readings of a trial's swims, each read and computed once while the screen is open and again when the window is
 * come back to. `squad` null: it is not known yet, so that body lengths and tables are not either; nothing is read until it is.
 */
export function useSwimReadings(
  host: HostClient,
  swimIds: readonly string[],
  squad: Squad | null,
): SwimReadings {
  const [swims, setSwims] = useState<ReadonlyMap<string, ReadSwim>>(new Map());
  const wanted = useMemo(() => [...new Set(swimIds)].sort().join(' '), [swimIds]);
  const missing = wanted.split(' ').filter((id) => id !== '' && !swims.has(id));
  const next = squad ? missing[0] : undefined;
  useEffect(() => {
    const back = (): void => {
      if (document.visibilityState === 'visible') setSwims(new Map());
    };
    document.addEventListener('visibilitychange', back);
    return () => document.removeEventListener('visibilitychange', back);
  }, []);
  useEffect(() => {
    if (next === undefined || !squad) return;
    const leaving = new AbortController();
    void readSwim(host, next, squad, leaving.signal).then((read) => {
      if (!leaving.signal.aborted) setSwims((before) => new Map([...before, [next, read]]));
    });
    return () => leaving.abort();
  }, [host, next, squad]);
  return { swims, waiting: missing.length };
}

async function readSwim(host: HostClient, id: string, squad: Squad, signal: AbortSignal): Promise<ReadSwim> {
  const read = await host.call('swim/read', { id }, signal);
  if (!read.ok) return { ok: false, error: read.error };
  const coach = await host.call('coach/read', {}, signal);
  const { swim } = read.value;
  const swimmer = squad.swimmers.find((each) => each.id === swim.card.swimmerId) ?? null;
  const markingError = coach.ok ? coachMarkingError(coach.value.coach, swim.clip.height) : null;
  return {
    ok: true,
    swim: { id: swim.id, card: swim.card },
    readings: computeReadings(readingContext(swim, { swimmer, markingError })),
  };
}
