import type { Result } from '#core/host-contract/host-error';
import type { PictureOrder } from '#core/timeline/picture-order';
import type { ClipFacts, ClipInput } from './frame-source';
import type { OpenedFilm } from './opened-film';
import type { FilmPacket } from './packet-index';

/** What the window asks of the worker that reads a film's container. */
export type FilmAsk =
  | { readonly kind: 'open'; readonly clip: ClipInput }
  /** One coded picture with its data. */
  | { readonly kind: 'packet'; readonly coded: number }
  /** The next pictures of a stream; one that the worker does not know begins at `from`. */
  | { readonly kind: 'packets'; readonly stream: number; readonly from: number; readonly count: number }
  | { readonly kind: 'drop'; readonly stream: number }
  | { readonly kind: 'close' };

/** An opened film as it is told to the window: everything but the way to its bytes. */
export interface FilmTold extends Omit<OpenedFilm, 'index' | 'close' | 'facts'> {
  readonly facts: ClipFacts;
  readonly order: PictureOrder;
  /** Coded pictures in columns: a list of a million objects takes a second to hand over. */
  readonly ticks: readonly number[];
  readonly durations: readonly number[];
  readonly keys: readonly boolean[];
  readonly lost: number;
}

export type FilmAnswer =
  | { readonly kind: 'opened'; readonly film: Result<FilmTold> }
  | { readonly kind: 'packets'; readonly packets: readonly FilmPacket[]; readonly ended: boolean }
  | { readonly kind: 'done' };

export interface ToFilmWorker {
  readonly id: number;
  readonly ask: FilmAsk;
}

export type FromFilmWorker =
  /** A sign of life while something is being read; `ground` rises with every part of the file seen for the first time. */
  | { readonly kind: 'beat'; readonly ground: number }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: FilmAnswer }
  | { readonly kind: 'failed'; readonly id: number; readonly reason: string };
