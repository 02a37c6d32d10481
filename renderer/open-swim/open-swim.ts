import type { FrameRange } from '#core/timeline/frame-range';
import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { PicturesChecked } from '#core/host-contract/operations/media-operations';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Swim } from '#core/swim-file/swim-schema';
import type { ClipClock } from '#core/timeline/clip-clock';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import type { HostClient } from '../host/host-client';
import type { Known, ReadingsStore } from './readings-store';
import type { Autosave } from './autosave';
import type { SwimDocument } from './swim-document';
import type { ViewState, ViewStore } from './view-store';
import type { FollowStore } from './follow-store';
import type { FramePicture, FrameSource } from '../video/frame-source';
import type { Result } from '#core/host-contract/host-error';

/** Why there are no pictures, in the coach's words; the marks and readings are there all the same. */
export interface FilmState {
  readonly source: FrameSource | null;
  /** Whether the pictures are the clip's own or those of its working copy. */
  readonly from: 'clip' | 'copy';
  readonly trouble: FilmTrouble | null;
  /** Opens the same pictures once more, for work that must not disturb the stepping; null without pictures. */
  readonly reopen: ((budgetBytes: number, signal: AbortSignal) => Promise<Result<FrameSource>>) | null;
  /** The working copy being made; null when none is. */
  readonly copying: Copying | null;
  /** Milliseconds a step takes on this clip, when that is too long and a working copy would help; null else. */
  readonly slowMs: number | null;
  /** Frames met so far that this window could not decode. */
  readonly broken: number;
  /** What a check of the whole clip found, begun when the first such frame is met; null until then. */
  readonly checked: PicturesChecked | null;
}
export interface Copying {
  /** There is no picture without it, or stepping through the clip itself is slow. */
  readonly why: 'needed' | 'slow';
  readonly share: number | null;
  readonly words: string;
  /** What of it can be shown already. */
  readonly pieces: readonly FrameRange[];
  readonly stop: () => void;
}
type FilmTrouble =
  | { readonly kind: 'missing'; readonly waiting?: boolean }
  | { readonly kind: 'changed'; readonly waiting?: boolean }
  | { readonly kind: 'no-copy'; readonly words: string }
  | { readonly kind: 'unreadable'; readonly words: string };

/** Opens the film, and keeps it in step with what happens to its file. */
export interface FilmKeeper {
  readonly open: (clipStatus: ClipStatus) => Promise<void>;
  readonly makeCopy: (why: Copying['why']) => Promise<void>;
  /**
   * The clip's own picture of a frame, where a smaller working copy is shown; null where this window can't decode the clip or
   * another frame was asked for since.
   */
  readonly ownPicture: (frame: number) => Promise<FramePicture | null>;
  /** The file could not be read just now: finds out why, says so, and opens it again once it is back. */
  readonly unreadable: () => Promise<void>;
}
export type ClipStatus = 'present' | 'missing' | 'changed';

/** Everything the parts of the bench share while one swim is open. */
export interface OpenSwim {
  readonly host: HostClient;
  readonly document: SwimDocument;
  readonly view: ViewStore;
  readonly autosave: Autosave;
  readonly readings: ReadingsStore;
  readonly film: StoreApi<FilmState>;
  readonly follow: FollowStore;
  readonly keeper: FilmKeeper;
  readonly known: StoreApi<Known>;
  /** The library's squad; null until it has been read. */
  readonly squad: StoreApi<{ readonly squad: Squad | null }>;
  /** A short message to the coach that goes away by itself. */
  readonly say: (words: string) => void;
}

export const OpenSwimContext = createContext<OpenSwim | null>(null);

export function useOpenSwim(): OpenSwim {
  const session = useContext(OpenSwimContext);
  if (!session) throw new Error('this part belongs inside an open bench');
  return session;
}

export function useView<T>(select: (state: ViewState) => T): T {
  return useStore(useOpenSwim().view, select);
}

export function useSwim<T>(select: (swim: Swim) => T): T {
  return useStore(useOpenSwim().document.store, (state) => select(state.swim));
}

export const createFilmStore = (): StoreApi<FilmState> =>
  createStore<FilmState>(() => ({
    source: null,
    from: 'clip',
    trouble: null,
    copying: null,
    slowMs: null,
    broken: 0,
    checked: null,
    reopen: null,
  }));

const clocks = new WeakMap<object, { slowdown: number; clock: ClipClock }>();

/** The swim's clock; the same object until its slowdown changes. */
export function clockOf(swim: Swim): ClipClock {
  const key = swim.clip.frameTimes;
  const slowdown = swim.clip.slowdown.factor;
  const known = clocks.get(key);
  if (known?.slowdown === slowdown) return known.clock;
  const clock: ClipClock = { table: known?.clock.table ?? tableFromRecord(key), slowdown };
  clocks.set(key, { slowdown, clock });
  return clock;
}
