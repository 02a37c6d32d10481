import { failure, success } from '#core/host-contract/host-error';
import type { FilmAnswer, FilmAsk, FilmTold, FromFilmWorker, ToFilmWorker } from './film-message';
import { createGround } from './new-ground';
import { wordsOf } from './open-clip';
import { type OpenedFilm, openFilm } from './opened-film';
import type { FilmPacket } from './packet-index';

/** How often a sign of life is given while something is being read, in milliseconds. */
const beatEvery = 250;
const never = new AbortController().signal;

let film: OpenedFilm | null = null;
const streams = new Map<number, AsyncGenerator<FilmPacket, void, unknown>>();
const ground = createGround();
let asked = 0;
let beating: ReturnType<typeof setInterval> | null = null;

const say = (message: FromFilmWorker, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });
const beat = (): void => say({ kind: 'beat', ground: ground.seen() });

/** The library hands out views on memory of its own: what is given away is a copy. */
const ownCopy = ({ type, data }: FilmPacket): FilmPacket => ({ type, data: data.slice() });

function told({ facts, index, decoding, flip, timesInDecodingOrder }: OpenedFilm): FilmTold {
  const { order, pictures, lost } = index;
  return {
    ...{ facts, order, lost, decoding, flip, timesInDecodingOrder },
    ticks: pictures.map(({ tick }) => tick),
    durations: pictures.map(({ durationTicks }) => durationTicks),
    keys: pictures.map(({ key }) => key),
  };
}

async function drop(stream: number): Promise<void> {
  const dropped = streams.get(stream);
  streams.delete(stream);
  await dropped?.return();
}

async function take(stream: number, from: number, count: number): Promise<FilmAnswer> {
  const running = streams.get(stream) ?? film?.index.readFrom(from);
  if (!running) throw new Error('no film is open');
  streams.set(stream, running);
  const packets: FilmPacket[] = [];
  while (packets.length < count) {
    const { value, done } = await running.next();
    if (done || !value) {
      streams.delete(stream);
      return { kind: 'packets', packets, ended: true };
    }
    packets.push(ownCopy(value));
  }
  return { kind: 'packets', packets, ended: false };
}

async function answer(ask: FilmAsk): Promise<FilmAnswer> {
  switch (ask.kind) {
    case 'open': {
      if (film) return { kind: 'opened', film: failure('bad-request') };
      const opened = await openFilm(ask.clip, never, ground);
      if (!opened.ok) return { kind: 'opened', film: opened };
      film = opened.value;
      return { kind: 'opened', film: success(told(film)) };
    }
    case 'packet': {
      const packet = (await film?.index.read(ask.coded)) ?? null;
      return { kind: 'packets', packets: packet ? [ownCopy(packet)] : [], ended: true };
    }
    case 'packets':
      return take(ask.stream, ask.from, ask.count);
    case 'drop':
      await drop(ask.stream);
      return { kind: 'done' };
    case 'close':
      await Promise.all([...streams.keys()].map(drop));
      film?.close();
      film = null;
      return { kind: 'done' };
  }
}

self.onmessage = ({ data: { id, ask } }: MessageEvent<ToFilmWorker>): void => {
  asked += 1;
  beating ??= setInterval(beat, beatEvery);
  answer(ask)
    .then(
      (given) => {
        const transfer = given.kind === 'packets' ? given.packets.map(({ data }) => data.buffer) : [];
        say({ kind: 'answer', id, answer: given }, transfer as ArrayBuffer[]);
      },
      (problem: unknown) => say({ kind: 'failed', id, reason: wordsOf(problem) }),
    )
    .finally(() => {
      asked -= 1;
      if (asked > 0 || beating === null) return;
      clearInterval(beating);
      beating = null;
    });
};

// the first sign of life: the program is loaded
beat();
