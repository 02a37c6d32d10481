import { seeded } from '../../sample-clips/model/seeded';
import type { Random } from './mutate';

/** Something that takes hostile input. */
export interface FuzzTarget {
  readonly name: string;
  /** One case: makes its input from `random`, feeds it, and throws when a promise is broken. `note` keeps the input. */
  run(random: Random, note: (input: unknown) => void): Promise<void> | void;
}

interface Found {
  readonly target: string;
  readonly seed: number;
  readonly what: string;
  readonly input: string;
}

export interface FuzzReport {
  readonly target: string;
  readonly cases: number;
  readonly slowestMs: number;
  readonly found: readonly Found[];
}

/** The promise about time: no input may keep anything busy for longer. */
const slowestAllowedMs = 5000;
/** The promise about memory: what one case may add to the process, bytes. Our budget; a long swim's file takes 30 MB. */
const mostMemoryAllowed = 400e6;

const tooLong = Symbol('too long');

/** How long a late case is waited for before it is fed again, so that two of them don't meet. */
const lateMs = 30_000;

/** Ends the wait for a case that never ends, so that it is told instead of hanging the run. */
async function within<T>(work: Promise<T> | T, ms = slowestAllowedMs): Promise<T | typeof tooLong> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<typeof tooLong>((resolve) => {
    timer = setTimeout(() => resolve(tooLong), ms);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}

const inputText = (input: unknown): string => {
  if (input instanceof Uint8Array) return `bytes ${Buffer.from(input.subarray(0, 300)).toString('base64')}…`;
  const text = typeof input === 'string' ? input : (JSON.stringify(input) ?? String(input));
  return text.length > 600 ? `${text.slice(0, 600)}…` : text;
};

/** How often a case that was late is fed: on a jammed machine anything is late now and then, what hangs is late always. */
const feedsAtMost = 3;

/**
 * What the time of a case is measured by. `wall`: as the promise is meant, on a machine that does nothing else. `own`: this
 * process's own processor time, which a jammed machine doesn't stretch; what other programs are kept busy with is then late
 * only where it doesn't end at all.
 */
type Clock = 'wall' | 'own';
const clocks: Readonly<Record<Clock, () => number>> = {
  wall: () => performance.now(),
  own: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
};

/** Feeds a target with `cases` inputs; each has a seed of its own, so that a found case can be run again alone. */
export async function runFuzz(
  target: FuzzTarget,
  cases: number,
  firstSeed: number,
  clock: Clock = 'wall',
): Promise<FuzzReport> {
  const now = clocks[clock];
  const found: Found[] = [];
  let slowestMs = 0;
  for (let i = 0; i < cases; i++) {
    const seed = firstSeed + i;
    let input: unknown = null;
    const before = process.memoryUsage.rss();
    const report = (what: string): void =>
      void found.push({ target: target.name, seed, what, input: inputText(input) });
    const feed = async (): Promise<number> => {
      const start = now();
      try {
        const work = target.run(seeded(seed), (each) => {
          input = each;
        });
        if ((await within(work)) === tooLong && (await within(work, lateMs)) === tooLong)
          return Number.POSITIVE_INFINITY;
      } catch (error) {
        report(error instanceof Error ? `${error.name}: ${error.message.slice(0, 400)}` : String(error));
      }
      return now() - start;
    };
    let took = await feed();
    for (let feeds = 1; took > slowestAllowedMs && feeds < feedsAtMost; feeds++)
      took = Math.min(took, await feed());
    if (took > slowestAllowedMs)
      report(Number.isFinite(took) ? `took ${took.toFixed(0)} ms` : 'did not end in time');
    else slowestMs = Math.max(slowestMs, took);
    const grown = process.memoryUsage.rss() - before;
    if (grown > mostMemoryAllowed) report(`took ${(grown / 1e6).toFixed(0)} MB`);
    // targets that never wait would else keep those fed beside them waiting
    await new Promise((resolve) => setImmediate(resolve));
  }
  return { target: target.name, cases, slowestMs, found };
}
