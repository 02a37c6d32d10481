import { isDisposableAvc, isInstantAvc } from '#core/timeline/avc-disposable';
import { avcLengthBytes } from '#core/timeline/avc-units';
import { bytesOf } from './buffer-bytes';
import { createBell } from './bell';
import { type FilmDecoder, makeDecoderInWorker } from './decoder-in-worker';
import { closeFrame, opened } from './frame-ledger';
import type { OpenedFilm } from './opened-film';
import type { FilmPacket } from './packet-index';
import { createPicturesOnTheWay } from './pictures-on-the-way';
import {
  afterPumpEvent,
  idlePump,
  nextPumpStep,
  type PumpEvent,
  type PumpRun,
  type PumpState,
  runOf,
} from './pump-machine';
import type { DecoderPump, PumpSteering } from './pump-steering';
import { runPackets } from './run-packets';
import { showingOrder } from './showing-order';

/** Packets waiting in the decoder: enough to keep it busy, few enough to turn round at once. */
const queueDepth = 6;
/** What a decoder still holds when it is sent elsewhere is decoded for nothing; beyond this many, resetting it is cheaper. */
const worthFinishing = 2;

/** What the parts of a pump share. */
interface Pump {
  readonly film: OpenedFilm;
  readonly config: VideoDecoderConfig;
  readonly steering: PumpSteering;
  readonly ranks: ReturnType<typeof showingOrder>;
  readonly packets: ReturnType<typeof runPackets>;
  /** Fed and not come out, of pictures that their run can decode. */
  readonly onTheWay: ReturnType<typeof createPicturesOnTheWay>;
  /** Rung when the decoder takes or gives something, and when it is worth looking again at what is asked. */
  readonly turn: ReturnType<typeof createBell>;
  readonly wake: ReturnType<typeof createBell>;
  state(): PumpState;
  advance(event: PumpEvent): void;
}

/**
 * One decoder that runs in the direction of travel. Before every packet it asks again what is wanted, so a new request
 * turns it round within a few milliseconds; it begins a new run only where feeding on would not lead there. From one group
 * to another it goes without a pause where the next begins with a picture that needs none before it. What is known of the
 * decoder is a state of pump-machine.ts; here are the film, the decoder and the waiting.
 */
export function createDecoderPump(
  film: OpenedFilm,
  config: VideoDecoderConfig,
  steering: PumpSteering,
): DecoderPump {
  let current = idlePump;
  const pump: Pump = {
    film,
    config,
    steering,
    ranks: showingOrder(film.index),
    packets: runPackets(film.index),
    onTheWay: createPicturesOnTheWay(),
    turn: createBell(),
    wake: createBell(),
    state: () => current,
    advance(event) {
      current = afterPumpEvent(current, event);
    },
  };
  const ring = (): void => {
    pump.wake.ring();
    pump.turn.ring();
  };
  const decoder = createDecoderInUse(pump, ring);
  void pumpOn(pump, decoder);
  return {
    wake: ring,
    again() {
      decoder.drop({ kind: 'asked-again' });
      ring();
    },
    close() {
      decoder.drop({ kind: 'closed' });
      ring();
    },
  };
}

const isPending = ({ onTheWay, ranks }: Pump, frame: number): boolean =>
  onTheWay.has(ranks.rankOfFrame(frame));

const framesOf = ({ ranks }: Pump, which: readonly number[]): number[] =>
  which.map(ranks.frameOfRank).filter((frame) => frame >= 0);

const isStuck = (pump: Pump): boolean =>
  framesOf(pump, pump.onTheWay.all()).some((frame) => pump.steering.needsNow(frame));

const isClosed = ({ state }: Pump): boolean => state().kind === 'closed';

function lose(pump: Pump, which: readonly number[]): void {
  const gone = framesOf(pump, which);
  if (gone.length > 0) pump.steering.lost(gone);
}

type DecoderInUse = ReturnType<typeof createDecoderInUse>;

/** The decoder of the moment, made when the first packet is fed, and what becomes of its pictures. */
function createDecoderInUse(pump: Pump, ring: () => void) {
  const { film, steering, ranks, packets, onTheWay, turn, advance } = pump;
  let decoder: FilmDecoder | null = null;

  const takeOut = (picture: VideoFrame): void => {
    opened(picture);
    turn.ring();
    const [run, rank] = [picture.timestamp % 1000, Math.floor(picture.timestamp / 1000)];
    const came = onTheWay.take(run, rank, film.timesInDecodingOrder);
    lose(pump, came.passedOver);
    const frame = came.rank === null ? -1 : ranks.frameOfRank(came.rank);
    if (frame >= 0 && steering.wants(frame)) {
      advance({ kind: 'picture-given' });
      steering.deliver(frame, picture);
    } else closeFrame(picture);
  };
  /** The decoder and all it holds are given up. */
  const drop = (why: PumpEvent): void => {
    decoder?.close();
    decoder = null;
    onTheWay.forget();
    packets.end();
    advance(why);
  };
  return {
    get: () => decoder,
    make(): FilmDecoder {
      decoder ??= makeDecoderInWorker({
        output: takeOut,
        died: () => {
          drop({ kind: 'decoder-failed' });
          ring();
        },
        taken: turn.ring,
      });
      return decoder;
    },
    drop,
  };
}

async function pumpOn(pump: Pump, decoder: DecoderInUse): Promise<void> {
  const { steering, packets, wake, advance } = pump;
  while (!isClosed(pump)) {
    try {
      await takeStep(pump, decoder);
    } catch (problem) {
      if (isClosed(pump)) return;
      if (problem instanceof DOMException && problem.name !== 'NetworkError') {
        // a packet that can't be handed to a decoder counts like a death
        decoder.drop({ kind: 'decoder-failed' });
      } else {
        packets.end();
        advance({ kind: 'run-ended' });
        steering.unreadable(problem);
        await wake.wait();
      }
    }
  }
}

async function takeStep(pump: Pump, decoder: DecoderInUse): Promise<void> {
  const { film, steering, packets, onTheWay, turn, wake, state, advance } = pump;
  const { order } = film.index;
  await steering.room();
  if (isClosed(pump)) return;
  const run = runOf(state());
  const goal = steering.next(run, (frame) => isPending(pump, frame));
  const following = order.frameOfCoded[run?.next ?? -1] ?? -1;
  const step = nextPumpStep(state(), {
    hasGoal: goal !== null,
    goalComes: goal !== null && steering.comesFrom(run, goal),
    isStuck: goal === null && isStuck(pump),
    isHolding: goal === null && onTheWay.all().length > 0,
    nextIsWanted: goal === null && following >= 0 && steering.wants(following),
  });
  if (step === 'sleep') return wake.wait();
  if (step === 'flush') return flush(pump, decoder);
  if (goal === null) return feed(pump, decoder);
  if (step === 'give-up') return giveUp(pump, goal);
  if (step === 'begin-run') {
    const key = order.keyOfFrame[goal] as number;
    packets.begin(key);
    advance({ kind: 'run-began', key });
  }
  return isBusy(pump, decoder) ? turn.wait() : feed(pump, decoder);
}

function isBusy(pump: Pump, decoder: DecoderInUse): boolean {
  const waited = pump.steering.jumpedTo();
  // behind the picture of a jump only what pushes it out: more would take the processor from showing it
  const depth = waited !== null && isPending(pump, waited) ? worthFinishing : queueDepth;
  return (decoder.get()?.queued() ?? 0) >= depth;
}

/** The decoder failed without giving anything: what leans on the same key picture can't be decoded. */
function giveUp({ film, steering, advance }: Pump, frame: number): void {
  advance({ kind: 'gave-up' });
  const { keyOfFrame } = film.index.order;
  const key = keyOfFrame[frame];
  steering.lost(
    keyOfFrame.flatMap((other, index) => (other === key && steering.wants(index) ? [index] : [])),
  );
}

async function flush(pump: Pump, decoder: DecoderInUse): Promise<void> {
  const flushed = decoder.get();
  const ended = runOf(pump.state());
  if (flushed?.isReady()) await flushed.flush();
  if (!isStill(pump, ended) || decoder.get() !== flushed) return;
  pump.packets.end();
  pump.advance({ kind: 'run-ended' });
  lose(pump, pump.onTheWay.forget());
}

/** Whether a run is still the one in hand. */
const isStill = (pump: Pump, run: PumpRun | null): boolean =>
  !isClosed(pump) && runOf(pump.state())?.number === run?.number;

async function feed(pump: Pump, decoder: DecoderInUse): Promise<void> {
  const { film, config, steering, ranks, packets, onTheWay, turn, state, advance } = pump;
  const run = runOf(state());
  if (!run) return;
  const came = await Promise.race([packets.next(), turn.wait()]);
  // a new request does not wait for what was being read for an older one
  if (!came || !isStill(pump, run)) return;
  packets.take();
  const { value: packet, done } = came;
  if (done || !packet || run.next >= film.index.pictures.length) {
    advance({ kind: 'packets-ended' });
    return;
  }
  if (run.next === run.start && !(await begin(pump, decoder, packet, run))) return;
  const rank = ranks.rankOfCoded(run.next);
  const frame = film.index.order.frameOfCoded[run.next] ?? -1;
  advance({ kind: 'packet-taken' });
  // where the decoder's own order tells which picture is which, every picture must pass through it
  const mayLeaveOut = /^avc/.test(config.codec) && !film.timesInDecodingOrder;
  // on the way to a frame, a picture that nobody wants and no other leans on costs nothing
  const spared = mayLeaveOut && !run.careful && !(frame >= 0 && steering.wants(frame));
  if (spared && isDisposableAvc(packet.data, lengthBytesOf(config))) return;
  if (rank >= ranks.rankOfCoded(run.start)) onTheWay.feed(rank);
  // a picture carries its rank and, in the last three digits of its timestamp, its run
  decoder
    .get()
    ?.decode({ type: packet.type, timestamp: rank * 1000 + (run.number % 1000), data: packet.data });
}

/**
 * Makes the decoder ready for a run's first packet; false where something else came between. A picture that needs none
 * before it can simply be fed: what is in the decoder comes out first, and a reset would cost as much as decoding several.
 */
async function begin(pump: Pump, decoder: DecoderInUse, packet: FilmPacket, run: PumpRun): Promise<boolean> {
  const { config, steering, onTheWay } = pump;
  const current = decoder.get();
  if (current?.isReady()) {
    const needed = isStuck(pump);
    const isWorthFinishing = needed || steering.jumpedTo() === null || current.queued() <= worthFinishing;
    if (needsNoneBefore(packet, config) && isWorthFinishing) {
      onTheWay.begin(run.number % 1000);
      return true;
    }
    if (needed) {
      await current.flush();
      if (!isStill(pump, run)) return false;
    }
  }
  decoder.make().begin(config);
  onTheWay.forget();
  onTheWay.begin(run.number % 1000);
  return true;
}

const lengthBytesOf = (config: VideoDecoderConfig): ReturnType<typeof avcLengthBytes> =>
  avcLengthBytes(bytesOf(config.description));

const needsNoneBefore = ({ type, data }: FilmPacket, config: VideoDecoderConfig): boolean =>
  type === 'key' &&
  (/^(vp|av01)/.test(config.codec) ||
    (/^avc/.test(config.codec) && isInstantAvc(data, lengthBytesOf(config))));
