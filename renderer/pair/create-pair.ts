import { firstLocks } from '#core/compare/pair-lock';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { readingContext } from '#core/measures/compute-readings';
import { frameCount } from '#core/timeline/frame-table';
import { windowMemory } from '../host/window-memory';
import { type OpenSwim, clockOf, createFilmStore } from '../open-swim/open-swim';
import { createOpenSwim, type CreatedOpenSwim } from '../open-swim/create-open-swim';
import { createFilmKeeper } from '../open-swim/film-keeper';
import type { HostClient } from '../host/host-client';
import { readNothing } from '../open-swim/readings-reader';
import { createSwimJournal } from '../open-swim/swim-journal';
import { createViewStore } from '../open-swim/view-store';
import type { OpenFrameSource } from '../video/frame-source';
import { openFrameSource, pictureBudget } from '../video/open-frame-source';
import { keepPair, rememberedPair } from './pair-memory';
import { pairFrames, type PairSession } from './pair-session';
import { goToLock, showFrames } from './pair-steps';
import { createPairView, type Each } from './pair-view';

/** Two clips share what one has on the bench. */
const openHalf: OpenFrameSource = (input, options) =>
  openFrameSource(input, {
    ...options,
    budgetBytes: Math.min(options.budgetBytes ?? pictureBudget, pictureBudget / 2),
  });

export interface OpenPair {
  readonly session: PairSession;
  close(): Promise<void>;
}

interface Options {
  readonly host: HostClient;
  readonly ids: Each<string>;
  readonly say: (words: string) => void;
  readonly signal: AbortSignal;
}

const whole = (swim: OpenSwim) => ({
  first: 0,
  last: frameCount(clockOf(swim.document.swim()).table) - 1,
});

/** Opens two swims, or one twice: then both stages share the one document, so no mark is ever held in two versions. */
export async function createPair({ host, ids, say, signal }: Options): Promise<Result<OpenPair>> {
  const open = (swimId: string): Promise<Result<CreatedOpenSwim>> =>
    createOpenSwim({
      host,
      journal: createSwimJournal(window.localStorage),
      swimId,
      // the pair reads its swims stretch by stretch: readings of whole swims are not wanted here
      startReader: readNothing,
      say,
      openFrameSource: openHalf,
      signal,
    });
  const first = await open(ids[0]);
  if (!first.ok) return failure(first.error.code, first.error.detail);
  const second = ids[1] === ids[0] ? null : await open(ids[1]);
  if (second && !second.ok) {
    await first.value.close();
    return failure(second.error.code, second.error.detail);
  }
  const a: OpenSwim = {
    ...first.value.session,
    view: createViewStore({ tool: 'look' }),
    keeper: createFilmKeeper(() => a, openHalf, signal),
  };
  const b: OpenSwim = {
    ...(second?.value ?? first.value).session,
    view: createViewStore({ tool: 'look' }),
    film: second ? second.value.session.film : createFilmStore(),
    keeper: createFilmKeeper(() => b, openHalf, signal),
  };
  const eventsOf = ({ document }: OpenSwim) =>
    readingContext(document.swim(), { swimmer: null, markingError: null }).events;
  const begin = {
    locks: firstLocks({ events: eventsOf(a), from: 0 }, { events: eventsOf(b), from: 0 }),
    stretches: [whole(a), whole(b)],
  } as const;
  const swims = [a.document.swim(), b.document.swim()] as const;
  await windowMemory.ready;
  const { frames, ...remembered } = rememberedPair(windowMemory, swims, begin) ?? {
    ...begin,
    frames: null,
  };
  const session: PairSession = {
    host,
    swims: [a, b],
    view: createPairView(remembered),
    say,
  };
  goToLock(session);
  if (frames) showFrames(session, frames);
  const keep = (): void => keepPair(windowMemory, ids, session.view, () => pairFrames(session));
  // a reload ends the page without closing what is open on it
  window.addEventListener('pagehide', keep);
  const statuses = [first.value.opened.clipStatus, (second?.value ?? first.value).opened.clipStatus] as const;
  void Promise.all([a.keeper.open(statuses[0]), b.keeper.open(statuses[1])]);
  return success({
    session,
    async close() {
      keep();
      window.removeEventListener('pagehide', keep);
      for (const { film } of session.swims) {
        film.getState().source?.close();
        film.setState({ source: null, trouble: null });
      }
      await Promise.all([first.value.close(), second?.value.close()]);
    },
  });
}
