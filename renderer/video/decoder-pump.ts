import { isDisposableAvc, isInstantAvc } from '#core/timeline/avc-disposable';
import { avcLengthBytes } from '#core/timeline/avc-units';
import { bytesOf } from './buffer-bytes';
import { type FilmDecoder, makeDecoderAway } from './decoder-away';
import type { RunPlace } from './decoding-plan';
import { closeFrame, opened } from './frame-ledger';
import type { OpenedFilm } from './opened-film';
import type { FilmPacket } from './packet-index';
import { createPicturesOnTheWay } from './pictures-on-the-way';

/** What the pump asks of whoever steers it. */
export interface PumpSteering {
  /** The frame to get next, or null when there is nothing to decode now. `run` is where the decoder stands. */
  next(run: RunPlace | null, isPending: (frame: number) => boolean): number | null;
  /** Whether a run standing at `run` gives this frame by being fed on. */
  comesFrom(run: RunPlace | null, frame: number): boolean;
  wants(frame: number): boolean;
  /** Whether a picture still inside the decoder is needed before more are fed for other reasons. */
  needsNow(frame: number): boolean;
  /** The frame the coach waits for after a jump: others are not worth finishing meanwhile. */
  jumpedTo(): number | null;
  /** A decoded picture of a wanted frame; the receiver closes it. */
  deliver(frame: number, picture: VideoFrame): void;
  /** Resolves when there is room for more pictures on their way. */
  room(): Promise<void>;
  /** The decoder passed over these frames: they can't be decoded. */
  lost(frames: readonly number[]): void;
  /** The film can't be read at the moment. */
  unreadable(problem: unknown): void;
}

export interface DecoderPump {
  /** Looks at the plan again. */
  wake(): void;
  /** Begins anew with another decoder, at the group's start, with nothing left out: a picture did not come. */
  again(): void;
  close(): void;
}

/** Packets waiting in the decoder: enough to keep it busy, few enough to turn round at once. */
const queueDepth = 6;
/** What a decoder still holds when it is sent elsewhere is decoded for nothing; beyond this many, resetting it is cheaper. */
const worthFinishing = 2;

interface Run extends RunPlace {
  next: number;
  readonly packets: AsyncGenerator<FilmPacket, void, unknown>;
  /** Every picture passes through the decoder, wanted or not. */
  readonly whole: boolean;
  /** The next packet, where it has been asked for. */
  coming: Promise<IteratorResult<FilmPacket, void>> | null;
  ended: boolean;
}

/**
 * One decoder that runs in the direction of travel. Before every packet it asks again what is wanted, so a new wish
 * turns it round within a few milliseconds; it starts anew only where feeding on would not lead there. From one group to
 * another it goes without a pause where the next begins with a picture from which everything starts anew.
 */
export function createDecoderPump(
  film: OpenedFilm,
  config: VideoDecoderConfig,
  steering: PumpSteering,
): DecoderPump {
  const { order, pictures } = film.index;
  const showingOrder = rankByTime(pictures);
  const codedByRank = new Array<number>(pictures.length);
  showingOrder.forEach((rank, coded) => {
    codedByRank[rank] = coded;
  });

  const lengthBytes = avcLengthBytes(bytesOf(config.description));
  // where the decoder's own order tells which picture is which, every picture must pass through it
  const mayLeaveOut = /^avc/.test(config.codec) && !film.timesInDecodingOrder;

  let decoder: FilmDecoder | null = null;
  let run: Run | null = null;
  /** Fed and not come out, of pictures that their run can decode. */
  const onTheWay = createPicturesOnTheWay();
  let closed = false;
  let strikes = 0;
  /** The next run passes every picture through the decoder. */
  let carefully = false;
  /** Counts runs; a picture carries its rank and, in the last three digits of its timestamp, its run. */
  let runs = 0;
  let wake: (() => void) | null = null;
  let turn: (() => void) | null = null;

  const frameOfRank = (rank: number): number => order.frameOfCoded[codedByRank[rank] ?? -1] ?? -1;
  const isPending = (frame: number): boolean =>
    onTheWay.has(showingOrder[order.codedOfFrame[frame] ?? -1] ?? -1);
  const framesOf = (ranks: readonly number[]): number[] =>
    ranks.map(frameOfRank).filter((frame) => frame >= 0);
  const isStuck = (): boolean => framesOf(onTheWay.all()).some(steering.needsNow);
  const lose = (ranks: readonly number[]): void => {
    const gone = framesOf(ranks);
    if (gone.length > 0) steering.lost(gone);
  };

  const takeOut = (picture: VideoFrame): void => {
    opened(picture);
    turn?.();
    const came = onTheWay.take(
      picture.timestamp % 1000,
      Math.floor(picture.timestamp / 1000),
      film.timesInDecodingOrder,
    );
    lose(came.passedOver);
    const frame = came.rank === null ? -1 : frameOfRank(came.rank);
    if (frame >= 0 && steering.wants(frame)) {
      strikes = 0;
      steering.deliver(frame, picture);
    } else closeFrame(picture);
  };

  /** The decoder and all it holds are given up. */
  const dropDecoder = (): void => {
    decoder?.close();
    decoder = null;
    onTheWay.forget();
    endRun();
  };

  const makeDecoder = (): FilmDecoder =>
    makeDecoderAway({
      output: takeOut,
      died: () => {
        strikes += 1;
        dropDecoder();
        turn?.();
        wake?.();
      },
      taken: () => turn?.(),
    });

  const endRun = (): void => {
    const ended = run;
    run = null;
    if (ended) void ended.packets.return().catch(() => undefined);
  };

  const startRun = (key: number): Run => {
    endRun();
    runs += 1;
    const whole = carefully;
    carefully = false;
    return { start: key, next: key, packets: film.index.readFrom(key), whole, coming: null, ended: false };
  };

  /**
   * Makes the decoder ready for a run's first packet; false where something else came between. A picture from which
   * everything starts anew can simply be fed: what is in the decoder comes out before it, and a reset would cost as much as
   * decoding several.
   */
  const begin = async (packet: FilmPacket, now: Run): Promise<boolean> => {
    if (decoder?.isReady()) {
      const needed = isStuck();
      const isWorthFinishing = needed || steering.jumpedTo() === null || decoder.queued() <= worthFinishing;
      if (startsAnew(packet) && isWorthFinishing) {
        onTheWay.begin(runs % 1000);
        return true;
      }
      if (needed) {
        await decoder.flush();
        if (run !== now || closed) return false;
      }
    }
    decoder ??= makeDecoder();
    decoder.begin(config);
    onTheWay.forget();
    onTheWay.begin(runs % 1000);
    return true;
  };
  const startsAnew = ({ type, data }: FilmPacket): boolean =>
    type === 'key' &&
    (/^(vp|av01)/.test(config.codec) || (/^avc/.test(config.codec) && isInstantAvc(data, lengthBytes)));

  /** Everything that is still inside the decoder comes out; the run is over, as a decoder then needs a key picture. */
  const flush = async (): Promise<void> => {
    const flushed = decoder;
    const ended = run;
    if (flushed?.isReady()) await flushed.flush();
    if (run !== ended || decoder !== flushed || closed) return;
    endRun();
    lose(onTheWay.forget());
  };

  const feed = async (): Promise<void> => {
    const now = run;
    if (!now) return;
    now.coming ??= now.packets.next();
    // where nobody waits for it any more, its failing is nobody's
    now.coming.catch(() => undefined);
    const came = await Promise.race([now.coming, oneTurn()]);
    // a new wish does not wait for what was being read for an older one
    if (!came || run !== now || closed) return;
    now.coming = null;
    const { value: packet, done } = came;
    if (done || !packet || now.next >= pictures.length) {
      now.ended = true;
      return;
    }
    if (now.next === now.start && !(await begin(packet, now))) return;
    const rank = showingOrder[now.next] ?? 0;
    const frame = order.frameOfCoded[now.next] ?? -1;
    now.next += 1;
    // on the way to a frame, a picture that nobody wants and no other leans on costs nothing
    const spared = mayLeaveOut && !now.whole && !(frame >= 0 && steering.wants(frame));
    if (spared && isDisposableAvc(packet.data, lengthBytes)) return;
    if (rank >= (showingOrder[now.start] ?? 0)) onTheWay.feed(rank);
    decoder?.decode({ type: packet.type, timestamp: rank * 1000 + (runs % 1000), data: packet.data });
  };

  const isBusy = (): boolean => {
    const waited = steering.jumpedTo();
    // behind the picture of a jump only what pushes it out: more would take the processor from showing it
    const depth = waited !== null && isPending(waited) ? worthFinishing : queueDepth;
    return (decoder?.queued() ?? 0) >= depth;
  };
  const oneTurn = (): Promise<void> =>
    new Promise((resolve) => {
      turn = resolve;
    });
  const sleep = (): Promise<void> =>
    new Promise((resolve) => {
      wake = resolve;
    });

  const step = async (): Promise<void> => {
    await steering.room();
    if (closed) return;
    const goal = steering.next(run, isPending);
    if (goal === null) {
      const stuck = isStuck();
      if (!stuck && !(run?.ended && onTheWay.all().length > 0)) return sleep();
      return run?.ended || !feedsOnWell() ? flush() : feed();
    }
    if (strikes >= 2) return giveUp(goal);
    if (!run || run.ended || !steering.comesFrom(run, goal)) run = startRun(order.keyOfFrame[goal] ?? 0);
    if (isBusy()) return oneTurn();
    return feed();
  };

  /** Whether the next picture fed is itself worth having. */
  const feedsOnWell = (): boolean => {
    const frame = order.frameOfCoded[run?.next ?? -1] ?? -1;
    return frame >= 0 && steering.wants(frame);
  };

  /** The decoder died twice without giving anything: what leans on the same key picture can't be decoded. */
  const giveUp = (frame: number): void => {
    strikes = 0;
    const key = order.keyOfFrame[frame];
    steering.lost(
      order.keyOfFrame.flatMap((other, index) => (other === key && steering.wants(index) ? [index] : [])),
    );
  };

  const loop = async (): Promise<void> => {
    while (!closed) {
      try {
        await step();
      } catch (problem) {
        if (closed) return;
        endRun();
        if (problem instanceof DOMException && problem.name !== 'NetworkError') {
          // a packet that can't be handed to a decoder counts like a death
          strikes += 1;
          dropDecoder();
        } else {
          steering.unreadable(problem);
          await sleep();
        }
      }
    }
  };
  void loop();

  return {
    wake() {
      wake?.();
      turn?.();
    },
    again() {
      carefully = true;
      dropDecoder();
      wake?.();
      turn?.();
    },
    close() {
      closed = true;
      dropDecoder();
      wake?.();
      turn?.();
    },
  };
}

/** Each coded picture's place in showing order (ties in decoding order): a name that no rounding can blur. */
function rankByTime(pictures: readonly { readonly tick: number }[]): number[] {
  const byTime = pictures.map((_, coded) => coded);
  byTime.sort((a, b) => (pictures[a]?.tick ?? 0) - (pictures[b]?.tick ?? 0) || a - b);
  const ranks = new Array<number>(pictures.length);
  byTime.forEach((coded, rank) => {
    ranks[coded] = rank;
  });
  return ranks;
}
