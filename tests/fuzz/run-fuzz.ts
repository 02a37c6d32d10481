import { seeded } from '../../sample-clips/model/seeded';
import type { Random } from './mutate';

/** Something that takes hostile input. */
export interface FuzzTarget {
  readonly name: string;
  /** One case: makes its input from `random`, feeds it, and throws when a promise is broken. `note` keeps the input. */
  run(random: Random, note: (input: unknown) => void): Promise<void> | void;
}

export interface Found {
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
export const slowestAllowedMs = 5000;
/** The promise about memory: what one case may add to the process, bytes. Our budget; a long swim's file takes 30 MB. */
export const mostMemoryAllowed = 400e6;

const tooLong = Symbol('too long');

/** Ends the wait for a case that never ends, so that it is told instead of hanging the run. */
async function within<T>(work: Promise<T> | T): Promise<T | typeof tooLong> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<typeof tooLong>((resolve) => {
    timer = setTimeout(() => resolve(tooLong), slowestAllowedMs);
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

/** Feeds a target with `cases` inputs; each has a seed of its own, so that a found case can be run again alone. */
export async function runFuzz(target: FuzzTarget, cases: number, firstSeed: number): Promise<FuzzReport> {
  const found: Found[] = [];
  let slowestMs = 0;
  for (let i = 0; i < cases; i++) {
    const seed = firstSeed + i;
    let input: unknown = null;
    const before = process.memoryUsage.rss();
    const start = performance.now();
    const report = (what: string): void =>
      void found.push({ target: target.name, seed, what, input: inputText(input) });
    try {
      const work = target.run(seeded(seed), (each) => {
        input = each;
      });
      if ((await within(work)) === tooLong) report('did not end in time');
    } catch (error) {
      report(error instanceof Error ? `${error.name}: ${error.message.slice(0, 400)}` : String(error));
    }
    const took = performance.now() - start;
    slowestMs = Math.max(slowestMs, took);
    if (took > slowestAllowedMs) report(`took ${took.toFixed(0)} ms`);
    const grown = process.memoryUsage.rss() - before;
    if (grown > mostMemoryAllowed) report(`took ${(grown / 1e6).toFixed(0)} MB`);
  }
  return { target: target.name, cases, slowestMs, found };
}
