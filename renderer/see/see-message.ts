import type { RunsOn } from '../open-swim/see-store';
import type { SeenPicture } from '#core/see/cut-square';
import type { SeenFrame } from '#core/see/seen-runs';
import type { Square } from '#core/see/square';

/** Where the app's own files for seeing lie; see `see-files.ts`. */
export interface SeeFiles {
  readonly runtime: string;
  readonly program: string;
  readonly landmarks: string;
  readonly detector: string;
}

/** What came of one picture, without the body itself: the worker keeps that until all are laid. */
export type Glance =
  | { readonly kind: 'seen' }
  | { readonly kind: 'lost' }
  | { readonly kind: 'several'; readonly squares: readonly Square[] };

export type ToSeer =
  | { readonly kind: 'open'; readonly files: SeeFiles }
  /** A swim from its start; `chosen`: where the coach said the swimmer is. */
  | { readonly kind: 'begin'; readonly id: number; readonly chosen: Square | null }
  | {
      readonly kind: 'look';
      readonly id: number;
      readonly frame: number;
      readonly time: number;
      readonly picture: SeenPicture;
    }
  /** All pictures were looked at: lay the bodies. */
  | { readonly kind: 'lay'; readonly id: number };

export type FromSeer =
  | { readonly kind: 'opened'; readonly runsOn: RunsOn }
  | { readonly kind: 'begun'; readonly id: number }
  | { readonly kind: 'looked'; readonly id: number; readonly glance: Glance }
  | { readonly kind: 'laid'; readonly id: number; readonly frames: readonly SeenFrame[] }
  | { readonly kind: 'failed'; readonly reason: string };
