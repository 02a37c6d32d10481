import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Drill } from '#core/practice/drill-schema';
import type { SeasonSwim } from '#core/practice/season-swim';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import type { HostClient } from '../host/host-client';
import { background } from '../readings/window-background';

interface Computed {
  /** What the readings rest on: the swim's revision, its swimmer and the coach's marking. */
  readonly of: string;
  readonly swim: SeasonSwim;
}

/** The last readings of each swim that were computed in this window; every save makes a new revision, so the last only. */
const computed = new Map<string, Computed>();
/** Swims kept at most; one takes a few kilobytes. */
const computedKept = 4000;

/**
 * Swims of one swimmer with all readings, as they come: each is read in turn and measured beside the window. Null for one that
 * can't be read. Ends early when it is told to.
 */
export async function* readSeasonSwims(
  host: HostClient,
  swims: readonly SwimSummary[],
  { swimmer, drills }: { readonly swimmer: Swimmer; readonly drills: readonly Drill[] },
  signal: AbortSignal,
): AsyncGenerator<SeasonSwim | null> {
  const coach = await host.call('coach/read', {});
  for (const { id, revision, clip } of swims) {
    if (signal.aborted) return;
    const markingError = coach.ok ? coachMarkingError(coach.value.coach, clip.height) : null;
    const of = `${revision} ${JSON.stringify(swimmer)} ${JSON.stringify(markingError)}`;
    const before = computed.get(id);
    if (before?.of === of) {
      yield before.swim;
      continue;
    }
    const read = await host.call('swim/read', { id });
    if (signal.aborted) return;
    if (!read.ok) {
      yield null;
      continue;
    }
    const measured = { swim: read.value.swim, swimmer, markingError };
    const swim = await background.ask('season', { of: measured, drills }, signal);
    if (!swim) return;
    if (computed.size >= computedKept) computed.clear();
    computed.set(id, { of, swim });
    yield swim;
  }
}
