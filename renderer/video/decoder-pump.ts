import { avcLengthBytes, isDisposableAvc, isInstantAvc } from '#core/timeline/avc-disposable';
import { bytesOf } from './buffer-bytes';
import type { RunPlace } from './decoding-plan';
import { closeFrame, opened } from './frame-ledger';
import type { OpenedFilm } from './opened-film';
import type { FilmPacket } from './packet-index';

/** What the pump asks of whoever steers it. */
export interface PumpSteering {
  /** The frame to get next, or null when there is nothing to decode now. `run` is where the decoder stands. */
  next(run: RunPlace | null, isPending: (frame: number) => boolean): number | null;
  /** Whether a run standing at `run` gives this frame by being fed on. */
  comesFrom(run: RunPlace | null, frame: number): boolean;
  wants(frame: number): boolean;
  /** Whether a picture still inside the decoder is needed before more are fed for other reasons. */
  needsNow(frame: number): boolean;
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
  close(): void;
}

/** Packets waiting in the decoder: enough to keep it busy, few enough to turn round at once. */
const queueDepth = 6;
/** What a decoder still holds when it is sent elsewhere is decoded for nothing; beyond this many, resetting it is cheaper. */
const worthFinishing = 2;

interface Run extends RunPlace {
  next: number;
  readonly packets: AsyncGenerator<FilmPacket, void, unknown>;
  ended: boolean;
}

/**
 * One decoder that runs in the direction of travel. Before every packet it asks again what is wanted, so a new wish
 * turns it round within a few milliseconds; it starts anew only where feeding on would not lead there.
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

  let decoder: VideoDecoder | null = null;
  let run: Run | null = null;
  /** Ranks fed and not come out, of pictures this run can decode. */
  let pending: number[] = [];
  let closed = false;
  let strikes = 0;
  /** Counts runs; a picture carries its rank and, in the last three digits of its timestamp, its run. */
  let runs = 0;
  let wake: (() => void) | null = null;
  let turn: (() => void) | null = null;

  const frameOfRank = (rank: number): number => order.frameOfCoded[codedByRank[rank] ?? -1] ?? -1;
  const isPending = (frame: number): boolean =>
    pending.includes(showingOrder[order.codedOfFrame[frame] ?? -1] ?? -1);

  const takeOut = (picture: VideoFrame): void => {
    opened(picture);
    turn?.();
    if (picture.timestamp % 1000 !== runs % 1000) {
      // left over from a run that was given up
      closeFrame(picture);
      return;
    }
    let rank = Math.floor(picture.timestamp / 1000);
    if (film.timesInDecodingOrder) rank = pending[0] ?? rank;
    const place = pending.indexOf(rank);
    const frame = frameOfRank(rank);
    if (place < 0) {
      // a picture from before the run's first: decoded without what it leans on
      closeFrame(picture);
      return;
    }
    // pictures come out in showing order: what should have come before will not come any more
    const passedOver = pending.slice(0, place).map(frameOfRank);
    pending = pending.slice(place + 1);
    if (passedOver.length > 0) steering.lost(passedOver.filter((lost) => lost >= 0));
    if (frame >= 0 && steering.wants(frame)) {
      strikes = 0;
      steering.deliver(frame, picture);
    } else closeFrame(picture);
  };

  const makeDecoder = (): VideoDecoder => {
    const made: VideoDecoder = new VideoDecoder({
      output: (picture) => {
        if (decoder === made) takeOut(picture);
        else picture.close();
      },
      error: () => {
        if (decoder !== made) return;
        strikes += 1;
        decoder = null;
        endRun();
        turn?.();
        wake?.();
      },
    });
    made.ondequeue = () => turn?.();
    return made;
  };

  const endRun = (): void => {
    const ended = run;
    run = null;
    pending = [];
    if (ended) void ended.packets.return().catch(() => undefined);
  };

  const startRun = (key: number): Run => {
    endRun();
    runs += 1;
    return { start: key, next: key, packets: film.index.readFrom(key), ended: false };
  };

  /**
   * Makes the decoder ready for a run's first packet. A picture from which everything starts anew can simply be fed: a reset
   * would cost as much as decoding several.
   */
  const begin = (packet: FilmPacket): void => {
    if (decoder?.state === 'configured' && decoder.decodeQueueSize <= worthFinishing && startsAnew(packet))
      return;
    if (decoder && decoder.state !== 'closed') decoder.reset();
    else decoder = makeDecoder();
    decoder.configure(config);
  };
  const startsAnew = ({ type, data }: FilmPacket): boolean =>
    type === 'key' &&
    (/^(vp|av01)/.test(config.codec) || (/^avc/.test(config.codec) && isInstantAvc(data, lengthBytes)));

  /** Everything that is still inside the decoder comes out; the run is over, as a decoder then needs a key picture. */
  const flush = async (): Promise<void> => {
    const flushed = decoder;
    const ended = run;
    if (flushed && flushed.state === 'configured') {
      // a wish that turns elsewhere meanwhile resets the decoder, which ends this flush
      await flushed.flush().catch(ignoreAbort);
    }
    if (run !== ended || decoder !== flushed) return;
    const left = pending.map(frameOfRank).filter((frame) => frame >= 0);
    endRun();
    if (left.length > 0) steering.lost(left);
  };

  const feed = async (): Promise<void> => {
    const now = run;
    if (!now) return;
    const { value: packet, done } = await now.packets.next();
    if (run !== now || closed) return;
    if (done || !packet || now.next >= pictures.length) {
      now.ended = true;
      return;
    }
    if (now.next === now.start) begin(packet);
    const rank = showingOrder[now.next] ?? 0;
    const frame = order.frameOfCoded[now.next] ?? -1;
    now.next += 1;
    // on the way to a frame, a picture that nobody wants and no other leans on costs nothing
    if (mayLeaveOut && !(frame >= 0 && steering.wants(frame)) && isDisposableAvc(packet.data, lengthBytes))
      return;
    if (rank >= (showingOrder[now.start] ?? 0)) insertSorted(pending, rank);
    decoder?.decode(
      new EncodedVideoChunk({ type: packet.type, timestamp: rank * 1000 + (runs % 1000), data: packet.data }),
    );
  };

  const isBusy = (): boolean => (decoder?.decodeQueueSize ?? 0) >= queueDepth;
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
    const stuck = pending.map(frameOfRank).some((frame) => frame >= 0 && steering.needsNow(frame));
    if (goal === null) {
      if (!stuck && !(run?.ended && pending.length > 0)) return sleep();
      return run?.ended || !feedsOnWell() ? flush() : feed();
    }
    if (strikes >= 2) return giveUp(goal);
    if (!run || run.ended || !steering.comesFrom(run, goal)) {
      if (stuck || (run?.ended && pending.some((rank) => steering.wants(frameOfRank(rank))))) {
        return flush();
      }
      run = startRun(order.keyOfFrame[goal] ?? 0);
    }
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
          // a packet the decoder refuses outright counts like a death
          strikes += 1;
          if (decoder && decoder.state !== 'closed') decoder.close();
          decoder = null;
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
    close() {
      closed = true;
      endRun();
      if (decoder && decoder.state !== 'closed') decoder.close();
      decoder = null;
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

function insertSorted(sorted: number[], value: number): void {
  let place = sorted.length;
  while (place > 0 && (sorted[place - 1] ?? 0) > value) place -= 1;
  sorted.splice(place, 0, value);
}

function ignoreAbort(problem: unknown): void {
  if (!(problem instanceof DOMException)) throw problem;
}
