import { expect, it } from 'vitest';
import { orderPictures } from '#core/timeline/picture-order';
import type { FilmWorker } from '../../../renderer/video/film-link';
import type { FilmAnswer, FilmAsk, FilmTold, ToFilmWorker } from '../../../renderer/video/film-message';
import { createFilmOpener } from '../../../renderer/video/open-film-in-worker';
import type { OpenedFilm } from '../../../renderer/video/opened-film';

const count = 20;
const order = orderPictures(
  Array.from({ length: count }, (_, n) => ({ tick: n, durationTicks: 1, key: n === 0 })),
  30,
);
const told: FilmTold = {
  facts: {
    ...{ container: 'WebM', codec: 'vp8', width: 4, height: 2, rotation: 0, table: order.table, rate: 30 },
    ...{ evenRate: true, taggedSlowdown: null, decodable: true, track: 1, tracks: [], fields: false },
    mayBeInterlaced: false,
  },
  ...{ order, lost: 0, decoding: 'images', flip: false, timesInDecodingOrder: false },
  ticks: order.table.starts,
  durations: order.table.starts.map(() => 1),
  keys: order.table.starts.map((_, n) => n === 0),
};

type Behaviour = (ask: FilmAsk) => FilmAnswer | 'silent' | 'dies' | 'circles';
const patience = { checkMs: 5, silentChecks: 4, standingChecks: 30, startChecks: 8 };

/** Workers that do as they are told, one after the other; the last behaviour is that of all later ones. */
function workers(...behaviours: Behaviour[]) {
  const made: { ended: boolean; asked: FilmAsk[] }[] = [];
  const make = (): FilmWorker => {
    const own = { ended: false, asked: [] as FilmAsk[] };
    const behave = behaviours[Math.min(made.length, behaviours.length - 1)];
    made.push(own);
    const worker: FilmWorker = {
      onmessage: null,
      onerror: null,
      postMessage({ id, ask }: ToFilmWorker) {
        own.asked.push(ask);
        const does = behave?.(ask) ?? 'silent';
        const say = (data: Parameters<NonNullable<FilmWorker['onmessage']>>[0]['data']) =>
          own.ended || worker.onmessage?.({ data } as never);
        queueMicrotask(() => {
          say({ kind: 'beat', ground: 0 });
          if (does === 'dies') worker.onerror?.({} as ErrorEvent);
          else if (does === 'circles') {
            const beat = setInterval(
              () => (own.ended ? clearInterval(beat) : say({ kind: 'beat', ground: 7 })),
              2,
            );
          } else if (does !== 'silent') say({ kind: 'answer', id, answer: does });
        });
      },
      terminate() {
        own.ended = true;
      },
    };
    return worker;
  };
  return { make, made };
}

const packet = (coded: number) => ({ type: 'delta' as const, data: Uint8Array.of(coded) });
const works: Behaviour = (ask) => {
  if (ask.kind === 'open') return { kind: 'opened', film: { ok: true, value: told } };
  if (ask.kind === 'packet') return { kind: 'packets', packets: [packet(ask.coded)], ended: true };
  if (ask.kind !== 'packets') return { kind: 'done' };
  const end = Math.min(count, ask.from + ask.count);
  return {
    kind: 'packets',
    packets: Array.from({ length: end - ask.from }, (_, n) => packet(ask.from + n)),
    ended: end === count,
  };
};
const clip = { blob: new Blob(['film']), name: 'film.webm' };
const never = new AbortController().signal;

async function openWith(
  ...behaviours: Behaviour[]
): Promise<{ film: OpenedFilm } & ReturnType<typeof workers>> {
  const set = workers(...behaviours);
  const film = await createFilmOpener(set.make, patience)(clip, never);
  if (!film.ok) throw new Error(film.error.code);
  return { ...set, film: film.value };
}
const read = async (film: OpenedFilm, from: number): Promise<number[]> => {
  const seen: number[] = [];
  for await (const { data } of film.index.readFrom(from)) seen.push(data[0] ?? -1);
  return seen;
};
const from = (first: number): number[] => Array.from({ length: count - first }, (_, n) => first + n);

it('gives every picture of the film once, in order, from any place', async () => {
  const { film } = await openWith(works);
  expect(await read(film, 0)).toEqual(from(0));
  expect(await read(film, 13)).toEqual(from(13));
  expect((await film.index.read(5))?.data[0]).toBe(5);
});

it('ends a worker that gives no sign of life, and says that the index can’t be read', async () => {
  const { make, made } = workers(() => 'silent');
  const opened = await createFilmOpener(make, patience)(clip, never);
  expect(opened).toMatchObject({ ok: false, error: { code: 'unreadable-index' } });
  expect(made.map(({ ended }) => ended)).toEqual([true]);
});

it('ends a worker that goes round in a circle while giving signs of life', async () => {
  const { make } = workers(() => 'circles');
  const opened = await createFilmOpener(make, patience)(clip, never);
  expect(opened).toMatchObject({ ok: false, error: { code: 'unreadable-index' } });
});

it('reads the next film in a new worker', async () => {
  const { make, made } = workers(() => 'silent', works);
  const open = createFilmOpener(make, patience);
  await open(clip, never);
  const second = await open(clip, never);
  expect(second.ok).toBe(true);
  expect(made.map(({ ended }) => ended)).toEqual([true, false]);
});

it('ends the worker at once when the coach cancels', async () => {
  const { make, made } = workers(() => 'circles');
  const leaving = new AbortController();
  const opening = createFilmOpener(make, { ...patience, checkMs: 10_000 })(clip, leaving.signal);
  leaving.abort();
  expect(await opening).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  expect(made[0]?.ended).toBe(true);
});

it('goes on at the same picture when the worker dies in the middle of the film', async () => {
  let left = 2;
  const { film, made } = await openWith(
    (ask) => (ask.kind === 'packets' && left-- === 0 ? 'dies' : works(ask)),
    works,
  );
  expect(await read(film, 0)).toEqual(from(0));
  expect(made.map(({ ended }) => ended)).toEqual([true, false]);
});

it('tells the death of a worker that dies again and again, and tries anew when asked again', async () => {
  const dies: Behaviour = (ask) => (ask.kind === 'open' ? works(ask) : 'dies');
  const { film, made } = await openWith(dies, dies, dies, works);
  await expect(film.index.read(3)).rejects.toThrow('broken');
  expect(made.filter(({ ended }) => ended)).toHaveLength(3);
  expect((await film.index.read(3))?.data[0]).toBe(3);
});

it('keeps the worker of a closed film for the next, and lets that film ask nothing more', async () => {
  const { make, made } = workers(works);
  const open = createFilmOpener(make, patience);
  const first = await open(clip, never);
  if (!first.ok) throw new Error(first.error.code);
  first.value.close();
  await expect(first.value.index.read(0)).rejects.toThrow('closed');
  await open(clip, never);
  expect(made).toHaveLength(1);
  expect(made[0]?.asked.map(({ kind }) => kind)).toEqual(['open', 'close', 'open']);
});
