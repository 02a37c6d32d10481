import type { CameraRun } from '#core/swim-file/swim-schema';
import type { FollowedPiece } from '../../shared-core/follow/followed-run';
import type { PieceTask } from '../../shared-core/follow/piece';

/** What was found on a piece: the points, and what the camera did; null where too little lies behind the swimmer. */
export interface FoundPiece extends FollowedPiece {
  readonly camera: CameraRun | null;
}

/** What the window says to the worker that follows points. */
export type ToFollower =
  | { readonly kind: 'open'; readonly opencv: string }
  | { readonly kind: 'follow'; readonly id: number; readonly task: PieceTask };

/** What the worker answers. Steps are counted in pictures looked at, both ways. */
export type FromFollower =
  | { readonly kind: 'opened' }
  | { readonly kind: 'step'; readonly id: number; readonly steps: number }
  | { readonly kind: 'done'; readonly id: number; readonly found: FoundPiece }
  | { readonly kind: 'failed'; readonly reason: string };
