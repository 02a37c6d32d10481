import type { FrameRange } from '#core/timeline/frame-range';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { LayPoint } from '#core/compare/lay-body-line';
import type { PairMode } from '#core/compare/pair-clock';
import type { Lock } from '#core/compare/pair-lock';
import type { PlayPace } from '../video/player';

/** The two swims of a pair, by place. */
export type Which = 0 | 1;
export const bothSwims = [0, 1] as const;
export const letterOf = (which: Which): 'A' | 'B' => (which === 0 ? 'A' : 'B');
export const otherOf = (which: Which): Which => (which === 0 ? 1 : 0);

/** One value for each swim. */
export type Each<T> = readonly [T, T];

export function withEach<T>(both: Each<T>, which: Which, value: T): Each<T> {
  return which === 0 ? [value, both[1]] : [both[0], value];
}

/** How the pair is looked at: never saved, never undone. */
export interface PairView {
  readonly mode: PairMode;
  /** The swim that steps and keys are about; the other follows. */
  readonly lead: Which;
  readonly locks: Each<Lock>;
  readonly stretches: Each<FrameRange>;
  readonly mirrored: Each<boolean>;
  /** Both bodies are shown equally long. */
  readonly sameLength: boolean;
  /** Where the body line of B is laid on that of A; null: not at all. */
  readonly lay: LayPoint | null;
  readonly playing: boolean;
  readonly pace: PlayPace;
  /** Places shown on the score; null: all of both stretches. */
  readonly scoreSpan: { readonly from: number; readonly to: number } | null;
  readonly showTable: boolean;
}

export type PairViewStore = StoreApi<PairView>;

export function createPairView(
  start: Pick<PairView, 'locks' | 'stretches'> & Partial<PairView>,
): PairViewStore {
  return createStore<PairView>(() => ({
    mode: 'time',
    lead: 0,
    mirrored: [false, false],
    sameLength: false,
    lay: null,
    playing: false,
    pace: 0.25,
    scoreSpan: null,
    showTable: true,
    ...start,
  }));
}
