import { createStore, type StoreApi } from 'zustand/vanilla';
import type { LandmarkName } from '#core/marks/landmark';

/** The state of following on one bench: never saved, never undone. */
export interface FollowState {
  /** The panel is up, in the place of the readings. */
  readonly open: boolean;
  /** Share of the work done while following, else null. */
  readonly share: number | null;
  /** What came of the last run, in the coach's words. */
  readonly outcome: string | null;
  /** The point the coach is being asked for. */
  readonly asked: { readonly landmark: LandmarkName; readonly frame: number } | null;
  /** The proposal the coach is looking at. */
  readonly looking: string | null;
  /** The look at the camera: under way, or without a result. */
  readonly camera:
    | { readonly state: 'looking'; readonly share: number }
    | { readonly state: 'unclear' }
    | null;
  /** The proposal that is being dragged along the score, and the frame it is held over. */
  readonly dragged: { readonly id: string; readonly frame: number } | null;
}

export type FollowStore = StoreApi<FollowState>;

export const createFollowStore = (): FollowStore =>
  createStore<FollowState>(() => ({
    open: false,
    share: null,
    outcome: null,
    asked: null,
    looking: null,
    dragged: null,
    camera: null,
  }));
