import type { CameraRun } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { WholePicture } from '#core/follow/whole-picture';

/** Pictures to look at, and where the swimmer is on each. */
export interface CameraTask {
  readonly pictures: readonly WholePicture[];
  /** Pixels of the shown picture, picture by picture. */
  readonly bodies: readonly (readonly Point[])[];
  readonly bodyLength: number;
  /** Only whether it stood: of a few pictures. Else all it did. */
  readonly onlyStood: boolean;
}

/** What the window asks of the worker that looks at the camera; it answers once. */
export interface ToLooker {
  readonly opencv: string;
  readonly task: CameraTask;
}

export type FromLooker =
  | { readonly kind: 'done'; readonly run: CameraRun | null }
  | { readonly kind: 'failed'; readonly reason: string };
