import { errorWords } from '#core/host-contract/error-words';
import { seenRuns, travelOfSeen } from '#core/see/seen-runs';
import { hasPoint } from '#core/swim-file/has-point';
import type { SeenRun, Swim } from '#core/swim-file/swim-schema';
import { realTimeOf } from '#core/timeline/clip-clock';
import { seeWords } from '#core/words/see';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import type { HostClient } from '../host/host-client';
import { openSwimFilm } from '../video/open-swim-film';
import type { FrameSource } from '../video/frame-source';
import { PictureLost } from '../video/picture-lost';
import { seeFilm } from './see-film';
import { leaveQueue, type SeeQueueStore } from './see-queue';
import type { Seer } from './seer';

export interface QueueTools {
  readonly host: Pick<HostClient, 'call' | 'clipAddress' | 'copyAddress'>;
  readonly startSeer: () => Seer;
  readonly openFilm?: typeof openSwimFilm;
  readonly now: () => Date;
}

/** Bytes of decoded pictures held meanwhile: enough to decode ahead. */
const readingBudget = 64 * 2 ** 20;

/** A swim that needs no seeing: it was seen, or the coach lays lines. */
const isDone = (swim: Swim): boolean => swim.seen.length > 0 || swim.postures.some(hasPoint);

/**
 * Sees one swim of the queue after the other, until none waits or the signal says so: then the one under way is begun again the
 * next time. What was seen is written where the swim is as it was read; who changed it meanwhile is read again.
 */
export async function runSeeQueue(
  queue: SeeQueueStore,
  tools: QueueTools,
  signal: AbortSignal,
): Promise<void> {
  const seer = tools.startSeer();
  const stop = (): void => seer.end();
  signal.addEventListener('abort', stop);
  try {
    for (;;) {
      const [swimId] = queue.getState().waiting;
      if (swimId === undefined || signal.aborted) return;
      const refused = await seeOne(queue, swimId, tools, seer, signal);
      if (signal.aborted) return;
      leaveQueue(queue, swimId, refused);
    }
  } finally {
    signal.removeEventListener('abort', stop);
    seer.end();
    queue.setState({ now: null });
  }
}

/** Null when it was seen, or need not be; else why not. */
async function seeOne(
  queue: SeeQueueStore,
  swimId: string,
  tools: QueueTools,
  seer: Seer,
  signal: AbortSignal,
): Promise<string | null> {
  const { host, openFilm = openSwimFilm } = tools;
  const read = await host.call('swim/read', { id: swimId }, signal);
  if (!read.ok) return errorWords(read.error).what;
  const { swim } = read.value;
  if (isDone(swim)) return null;
  const film = await openFilm(host, swim, { signal, budgetBytes: readingBudget });
  if (!film.ok) return errorWords(film.error).what;
  try {
    const found = await seen(swim, film.value.source, seer, signal, (share) =>
      // who emptied the queue meanwhile wants nothing more of it
      queue.getState().waiting.includes(swimId) ? queue.setState({ now: { swimId, share } }) : seer.end(),
    );
    if (typeof found === 'string') return found;
    return await write(tools, swimId, found, signal);
  } catch (problem) {
    if (signal.aborted || !queue.getState().waiting.includes(swimId)) return null;
    if (problem instanceof PictureLost) return seeWords('queueLost', { frame: problem.frame + 1 });
    return problem instanceof Error ? problem.message : String(problem);
  } finally {
    film.value.source.close();
  }
}

async function seen(
  swim: Swim,
  source: FrameSource,
  seer: Seer,
  signal: AbortSignal,
  tell: (share: number) => void,
): Promise<readonly SeenRun[] | string> {
  const clock = { table: tableFromRecord(swim.clip.frameTimes), slowdown: swim.clip.slowdown.factor };
  const frames = clock.table.starts.length;
  await seer.begin(null);
  const found = await seeFilm(
    source,
    frames,
    (frame) => realTimeOf(clock, frame),
    seer,
    (count) => tell(count / frames),
    signal,
  );
  if (found.kind === 'several') return seeWords('queueSeveral');
  return found.frames.length > 0 ? seenRuns(found.frames) : seeWords('queueNobody');
}

async function write(
  { host, now }: QueueTools,
  swimId: string,
  runs: readonly SeenRun[],
  signal: AbortSignal,
): Promise<string | null> {
  // as it is now: the coach may have said something of it meanwhile
  const read = await host.call('swim/read', { id: swimId }, signal);
  if (!read.ok) return errorWords(read.error).what;
  const { swim, revision } = read.value;
  if (isDone(swim)) return null;
  const seen = runs.map((run) => ({ ...run, points: [...run.points] }));
  const scene = { ...swim.scene, travel: swim.scene.travel ?? travelOfSeen(runs) };
  const changed = { ...swim, seen, scene, changedAt: now().toISOString() };
  const written = await host.call('swim/write', { swim: changed, baseRevision: revision });
  return written.ok ? null : errorWords(written.error).what;
}
