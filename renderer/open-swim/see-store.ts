import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Square } from '#core/see/square';
import { keptWith } from '#core/units/kept-with';
import type { OpenSwim } from './open-swim';

/** What the networks run on: the processor, or the graphics card through WebGPU. */
export type RunsOn = 'processor' | 'graphics';

/** The state of seeing on one bench: never saved, never undone. */
export interface SeeState {
  /** What is under way; null when nothing is. `share` goes from 0 to 1, `perSecond` are pictures looked at. */
  readonly running: {
    readonly share: number;
    readonly perSecond: number | null;
    readonly runsOn: RunsOn | null;
    readonly stop: () => void;
  } | null;
  /** What came of the last run, in the coach's words. */
  readonly outcome: string | null;
  /** Several swimmers are in the picture of a frame, and the coach is asked which. */
  readonly several: { readonly frame: number; readonly squares: readonly Square[] } | null;
}

/** One for each open swim. */
export const seeStoreOf: (of: OpenSwim) => StoreApi<SeeState> = keptWith(() =>
  createStore<SeeState>(() => ({ running: null, outcome: null, several: null })),
);
