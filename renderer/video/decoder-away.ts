import type { CodedChunk, FromDecoderWorker, ToDecoderWorker } from './decoder-message';

/** A decoder as it is fed: one turn after another, each beginning at a key picture. */
export interface FilmDecoder {
  /** Whether it can be fed as it stands. */
  isReady(): boolean;
  /** Pictures fed that it has not taken up. */
  queued(): number;
  /** Drops everything in hand and makes ready for a key picture. */
  begin(config: VideoDecoderConfig): void;
  decode(chunk: CodedChunk): void;
  /** Resolves when everything fed has come out; afterwards a key picture is needed. */
  flush(): Promise<void>;
  close(): void;
}

/** Who hears of it. */
export interface DecoderEars {
  /** A picture came out; the receiver closes it. */
  output(picture: VideoFrame): void;
  /** It failed; it can be begun anew. */
  died(): void;
  /** It can take more. */
  taken(): void;
}

export type MakeFilmDecoder = (ears: DecoderEars) => FilmDecoder;

/** The part of a Worker that is used. */
export interface DecoderWorker {
  onmessage: ((event: MessageEvent<FromDecoderWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: ToDecoderWorker, transfer: Transferable[]): void;
  terminate(): void;
}

/** Our defaults: how often a decoder that is at work is looked after, and how many looks without a sign of life end it. */
const checkMs = 250;
const silentChecks = 16;

/**
 * Makes decoders that run in workers of their own. A browser hands a decoder its next picture only when the thread it
 * belongs to is idle: in the window each picture drawn would hold it up. A closed one's worker is kept for the next.
 */
export function createDecoderMaker(makeWorker: () => DecoderWorker): MakeFilmDecoder {
  let spare: DecoderWorker | null = null;
  /** Counted over all decoders: what a kept worker still sends of an earlier one is known by it. */
  let turns = 0;
  let flushIds = 0;

  return ({ output, died, taken }) => {
    const worker = spare ?? makeWorker();
    spare = null;
    const flushes = new Map<number, () => void>();
    let turn = -1;
    let ready = false;
    let fed = 0;
    let takenUp = 0;
    let closed = false;
    /** Its program could not be loaded, or failed. */
    let broken = false;

    let watching: ReturnType<typeof setInterval> | null = null;
    let silent = 0;

    const unwatch = (): void => {
      if (watching !== null) clearInterval(watching);
      watching = null;
    };
    /** Checks are counted, not time: after the machine has slept every worker looks late. */
    const check = (): void => {
      silent += 1;
      if (silent > silentChecks) {
        broken = true;
        worker.terminate();
        fail();
      } else worker.postMessage({ kind: 'ping' }, []);
    };
    const watch = (): void => {
      if (watching !== null) return;
      silent = 0;
      watching = setInterval(check, checkMs);
    };
    const endFlushes = (): void => {
      for (const end of flushes.values()) end();
      flushes.clear();
    };
    const fail = (): void => {
      ready = false;
      unwatch();
      endFlushes();
      died();
    };
    worker.onmessage = ({ data }) => {
      silent = 0;
      if (data.kind === 'picture') {
        if (data.turn === turn && !closed) output(data.picture);
        else data.picture.close();
      } else if (data.kind === 'flushed') {
        flushes.get(data.id)?.();
        flushes.delete(data.id);
      } else if (data.kind === 'alive') {
        if (fed === takenUp && flushes.size === 0) unwatch();
      } else if (data.turn !== turn || closed) return;
      else if (data.kind === 'died') fail();
      else {
        takenUp = data.taken;
        taken();
      }
    };
    worker.onerror = () => {
      broken = true;
      if (!closed) fail();
    };

    return {
      isReady: () => ready,
      queued: () => fed - takenUp,
      begin(config) {
        turns += 1;
        turn = turns;
        ready = true;
        fed = 0;
        takenUp = 0;
        endFlushes();
        worker.postMessage({ kind: 'begin', turn, config }, []);
      },
      decode(chunk) {
        fed += 1;
        watch();
        worker.postMessage({ kind: 'decode', chunk }, [chunk.data.buffer]);
      },
      flush() {
        flushIds += 1;
        const id = flushIds;
        return new Promise((resolve) => {
          flushes.set(id, resolve);
          watch();
          worker.postMessage({ kind: 'flush', id }, []);
        });
      },
      close() {
        if (closed) return;
        closed = true;
        ready = false;
        unwatch();
        endFlushes();
        if (spare || broken) worker.terminate();
        else {
          worker.postMessage({ kind: 'close' }, []);
          spare = worker;
        }
      },
    };
  };
}

/** Decoders of the running app. */
export const makeDecoderAway = createDecoderMaker(
  () => new Worker(new URL('./decoder-worker.ts', import.meta.url), { type: 'module' }),
);
