import { type PlainWorker, type WorkerPatience, watchedWorker } from '../workers/watched-worker';
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
interface DecoderListener {
  /** A picture came out; the receiver closes it. */
  output(picture: VideoFrame): void;
  /** It failed; it can be begun anew. */
  died(): void;
  /** It can take more. */
  taken(): void;
}

export type MakeFilmDecoder = (listener: DecoderListener) => FilmDecoder;

export type DecoderWorker = PlainWorker<ToDecoderWorker, FromDecoderWorker>;

/** How often a decoder that is at work is looked after, and how many looks without a sign of life end it. Our defaults. */
const patience: WorkerPatience = { checkMs: 250, silentChecks: 17 };

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

    const endFlushes = (): void => {
      for (const end of flushes.values()) end();
      flushes.clear();
    };
    const fail = (): void => {
      ready = false;
      link.rest();
      endFlushes();
      died();
    };
    const heard = (data: FromDecoderWorker): void => {
      if (data.kind === 'picture') {
        if (data.turn === turn && !closed) output(data.picture);
        else data.picture.close();
      } else if (data.kind === 'flushed') {
        flushes.get(data.id)?.();
        flushes.delete(data.id);
      } else if (data.kind === 'alive') {
        if (fed === takenUp && flushes.size === 0) link.rest();
      } else if (data.turn !== turn || closed) return;
      else if (data.kind === 'died') fail();
      else {
        takenUp = data.taken;
        taken();
      }
    };
    const lost = (): void => {
      if (spare === worker) spare = null;
      if (!closed) fail();
    };
    // a busy decoder says nothing of itself while it has nothing to show
    const checked = (): void => link.send({ kind: 'ping' });
    const link = watchedWorker(worker, patience, { heard, lost, checked });

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
        link.send({ kind: 'begin', turn, config });
      },
      decode(chunk) {
        fed += 1;
        link.watch();
        link.send({ kind: 'decode', chunk }, [chunk.data.buffer]);
      },
      flush() {
        flushIds += 1;
        const id = flushIds;
        if (link.isOver()) return Promise.resolve();
        return new Promise((resolve) => {
          flushes.set(id, resolve);
          link.watch();
          link.send({ kind: 'flush', id });
        });
      },
      close() {
        if (closed) return;
        closed = true;
        ready = false;
        link.rest();
        endFlushes();
        if (spare || link.isOver()) link.end();
        else {
          link.send({ kind: 'close' });
          spare = worker;
        }
      },
    };
  };
}

/** Decoders of the running app. */
export const makeDecoderInWorker = createDecoderMaker(
  () => new Worker(new URL('./decoder-worker.ts', import.meta.url), { type: 'module' }),
);
