import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Result } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { Indexed } from './shelf-index';

export interface ReadTask {
  readonly kind: 'glance' | 'whole';
  readonly ids: readonly string[];
}

export type ReadAnswer =
  | { readonly kind: 'glance'; readonly answers: readonly (SwimSummary | null)[] }
  | { readonly kind: 'whole'; readonly answers: readonly Result<Indexed>[] };

export interface ReadingListener {
  onGlance(id: string, summary: SwimSummary): void;
  onWhole(id: string, read: Result<Indexed>): void;
}

/** Swims of one message: enough that messages cost nothing beside reading, few enough that the shelf fills steadily. */
const atATime = { glance: 50, whole: 10 } as const;

/** Threads that read at once. More than four wait for the disk; two on a small machine, as the host itself then rests. */
const threadCount = Math.max(2, Math.min(4, availableParallelism() - 1));

const inPieces = (kind: ReadTask['kind'], ids: readonly string[]): ReadTask[] =>
  Array.from({ length: Math.ceil(ids.length / atATime[kind]) }, (_, at) => ({
    kind,
    ids: ids.slice(at * atATime[kind], (at + 1) * atATime[kind]),
  }));

/** Order of the shelf: by swimmer's name, newest first. Swims that could not be glanced at come last. */
function shelfOrder(ids: readonly string[], seen: ReadonlyMap<string, SwimSummary>): string[] {
  const key = (id: string): [string, string] => {
    const card = seen.get(id)?.card;
    return card ? [card.swimmerName.toLocaleLowerCase(), card.date] : ['\uffff', ''];
  };
  return ids
    .map((id) => ({ id, key: key(id) }))
    .sort(({ key: [a, day] }, { key: [b, other] }) => (a < b ? -1 : a > b ? 1 : day < other ? 1 : -1))
    .map(({ id }) => id);
}

/**
 * Reads many swims in threads of their own, so that the host goes on answering: first all at a glance, then each whole,
 * from the top of the shelf. Ends when all are read, or when `signal` says so; throws when a thread fails.
 */
export async function readInThreads(
  entry: URL,
  library: string,
  ids: readonly string[],
  listener: ReadingListener,
  signal: AbortSignal,
): Promise<void> {
  const threads = Array.from({ length: threadCount }, () => {
    const thread = new Worker(entry, { workerData: library });
    // a program that has nothing else to do need not wait for the shelf
    thread.unref();
    return thread;
  });
  const seen = new Map<string, SwimSummary>();
  const through = async (tasks: readonly ReadTask[]): Promise<void> => {
    let next = 0;
    await Promise.all(
      threads.map(async (thread) => {
        for (let task = tasks[next++]; task && !signal.aborted; task = tasks[next++]) {
          const { ids: asked } = task;
          const done = await ask(thread, task, signal);
          if (!done) return;
          if (done.kind === 'whole')
            done.answers.forEach((read, at) => {
              listener.onWhole(asked[at] as string, read);
            });
          else
            done.answers.forEach((summary, at) => {
              if (!summary) return;
              seen.set(asked[at] as string, summary);
              listener.onGlance(asked[at] as string, summary);
            });
        }
      }),
    );
  };
  try {
    await through(inPieces('glance', ids));
    await through(inPieces('whole', shelfOrder(ids, seen)));
  } finally {
    await Promise.all(threads.map((thread) => thread.terminate()));
  }
}

/** One answer of a thread; null when stopped. */
function ask(thread: Worker, task: ReadTask, signal: AbortSignal): Promise<ReadAnswer | null> {
  return new Promise((resolve, reject) => {
    const end = (): void => {
      thread.off('message', onMessage);
      thread.off('error', onError);
      thread.off('exit', onExit);
      signal.removeEventListener('abort', onStop);
    };
    const onMessage = (answer: ReadAnswer): void => {
      end();
      resolve(answer);
    };
    const onError = (error: unknown): void => {
      end();
      reject(error);
    };
    const onExit = (): void => onError(new Error('a reading thread ended before it answered'));
    const onStop = (): void => {
      end();
      resolve(null);
    };
    thread.on('message', onMessage);
    thread.on('error', onError);
    thread.on('exit', onExit);
    signal.addEventListener('abort', onStop);
    thread.postMessage(task);
  });
}
