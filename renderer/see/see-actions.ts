import { seenRuns, travelOfSeen } from '#core/see/seen-runs';
import type { Square } from '#core/see/square';
import { realTimeOf } from '#core/timeline/clip-clock';
import { type OpenSwim, clockOf } from '../open-swim/open-swim';
import { goTo } from '../open-swim/stepping';
import { PictureLost } from '../video/picture-lost';
import { type SeenFilm, seeFilm } from './see-film';
import { seeStoreOf } from '../open-swim/see-store';
import { keepSeen } from './seen-commands';
import type { Seer } from './seer';
import { startSeer } from './start-seer';
import { seeWords } from '#core/words/see';

/** Bytes of decoded pictures held meanwhile: enough to decode ahead. */
const readingBudget = 96 * 2 ** 20;

/** One worker for the window: loading its networks takes a second or two. Made when first needed. */
let seer: Seer | null = null;

/** Looks for the swimmer on every picture and keeps the points seen. One undo step; nothing is changed when it is cancelled. */
export async function seeSwimmer(session: OpenSwim, chosen: Square | null = null): Promise<void> {
  const { document, film, follow } = session;
  const store = seeStoreOf(session);
  if (store.getState().running) return;
  follow.setState({ open: true });
  const { reopen, trouble } = film.getState();
  if (!reopen) {
    store.setState({
      outcome: trouble ? seeWords('thereNoPictures') : seeWords('filmStillOpening'),
    });
    return;
  }
  const stopped = new AbortController();
  seer ??= startSeer();
  const own = seer;
  const stop = (): void => {
    stopped.abort();
    own.end();
  };
  store.setState({
    running: { share: 0, perSecond: null, runsOn: null, stop },
    outcome: null,
    several: null,
  });
  try {
    const opened = await reopen(readingBudget, stopped.signal);
    if (!opened.ok) {
      store.setState({ outcome: seeWords('submarkCouldNot') });
      return;
    }
    try {
      const runsOn = await own.begin(chosen);
      const clock = clockOf(document.swim());
      const frames = clock.table.starts.length;
      const began = performance.now();
      const onLooked = (count: number): void => {
        const perSecond = (1000 * count) / Math.max(1, performance.now() - began);
        store.setState({ running: { share: count / frames, perSecond, runsOn, stop } });
      };
      const found = await seeFilm(
        opened.value,
        frames,
        (frame) => realTimeOf(clock, frame),
        own,
        onLooked,
        stopped.signal,
      );
      stopped.signal.throwIfAborted();
      keep(session, found);
    } finally {
      opened.value.close();
    }
  } catch (problem) {
    store.setState({ outcome: troubleWords(problem, stopped.signal.aborted) });
  } finally {
    store.setState({ running: null });
  }
}

function troubleWords(problem: unknown, cancelled: boolean): string {
  if (cancelled) return seeWords('cancelledNothingChanged');
  if (problem instanceof PictureLost) return seeWords('frameCantDecoded', { frame: problem.frame + 1 });
  const reason = problem instanceof Error ? problem.message : String(problem);
  return seeWords('submarkStoppedLooking', { reason });
}

function keep(session: OpenSwim, found: SeenFilm): void {
  const store = seeStoreOf(session);
  if (found.kind === 'several') {
    const { frame, squares } = found;
    store.setState({ several: { frame, squares } });
    goTo(session, frame);
    return;
  }
  if (found.frames.length === 0) {
    store.setState({ outcome: seeWords('submarkSawNo') });
    return;
  }
  const runs = seenRuns(found.frames);
  const { travel } = session.document.swim().scene;
  session.document.run(keepSeen(runs));
  const way = travel === null ? travelOfSeen(runs) : null;
  const words = [
    found.frames.length === found.looked
      ? seeWords('submarkSawSwimmer', { looked: found.looked })
      : seeWords('submarkSawSwimmerPictures', { frames: found.frames.length, looked: found.looked }),
    way ? seeWords('setDirectionTravel', { way }) : null,
  ];
  store.setState({ outcome: words.filter((each) => each !== null).join(' ') });
}

export function cancelSeeing(session: OpenSwim): void {
  seeStoreOf(session).getState().running?.stop();
}
