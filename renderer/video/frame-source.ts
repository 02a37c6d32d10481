import type { Result } from '#core/host-contract/host-error';
import type { FilmTrack } from '#core/host-contract/operations/media-operations';
import type { FrameTable } from '#core/timeline/frame-table';
import type { SmallGrey } from '#core/follow/whole-picture';
import type { DrawPicture, PicturePart } from './picture-part';

/** What the container says of a clip; everything a swim needs to know of its film. */
export interface ClipFacts {
  readonly container: string;
  readonly codec: string;
  /** Shown picture in square pixels, after rotation and pixel aspect. */
  readonly width: number;
  readonly height: number;
  readonly rotation: 0 | 90 | 180 | 270;
  readonly table: FrameTable;
  /** Whether all gaps between starts are equal within one tick. */
  readonly evenRate: boolean;
  /** Median pictures per media second. */
  readonly rate: number;
  /** Slowdown read from a capture-rate tag (capture rate / stored rate), or null when the file doesn't tell. */
  readonly taggedSlowdown: number | null;
  /** The camera says that a stretch of it is slowed and the rest is not. */
  readonly slowedInPart?: boolean;
  /** Whether this window can decode it, found by decoding one real picture. */
  readonly decodable: boolean;
  /** Pictures the container lists but the cut-off file no longer holds; they are not in the table. */
  readonly lostPictures?: number;
  /** Which of its film tracks this is, from 1, and all there are. */
  readonly track: number;
  readonly tracks: readonly FilmTrack[];
  /** Interlaced: each field is a frame of its own. */
  readonly fields: boolean;
  /** Its coding allows fields; only the host can tell whether there are any. */
  readonly mayBeInterlaced: boolean;
}

/** One decoded picture. It stays valid until the source that gave it is closed or the frame leaves its cache. */
export interface FramePicture {
  readonly frame: number;
  /** Shown size, as in ClipFacts. */
  readonly width: number;
  readonly height: number;
  /** Whether it is at the film's full resolution; else at half of it. */
  readonly whole: boolean;
  /** Draws the whole shown picture (turned, mirrored, square pixels) into a rectangle of a 2D context. */
  readonly draw: DrawPicture;
  /**
   * The packed colours (`packColour`) of a part of the shown picture, lying inside it, row by row, of every `step`th pixel
   * across and down. The caller's own.
   */
  colours(part: PicturePart, step?: 1 | 2): Uint16Array;
  /** The brightness of the whole shown picture, `step` pixels made one both ways. The caller's own. */
  smallGrey(step: number): SmallGrey;
}

/**
 * Decoded pictures by frame number. Stateful: keeps a decoder running in the direction of travel, decodes ahead of
 * the walk, holds a bounded number of pictures, and closes everything it opened.
 */
export interface FrameSource {
  readonly facts: ClipFacts;
  /** Size of the pictures themselves, shown upright: smaller than in `facts` where a smaller working copy stands in. */
  readonly resolution: { readonly width: number; readonly height: number };
  /** The picture when it is already decoded, else null; never waits. */
  held(frame: number): FramePicture | null;
  /**
   * The picture of `frame` (clamped to what exists). A newer `show` makes older unfinished ones reject with an
   * AbortError. `towards` tells which way the coach is walking, for decoding ahead. With `onWhole`, a picture at half size
   * will do while moving; `onWhole` then gets the one at full resolution, unless another frame is asked for before.
   */
  show(frame: number, towards: -1 | 0 | 1, onWhole?: (picture: FramePicture) => void): Promise<FramePicture>;
  /** Bytes of pictures held now, and the budget they may not pass. */
  memory(): { readonly heldBytes: number; readonly budgetBytes: number; readonly pictures: number };
  /** Gives the source another budget; what is more than that goes at once. */
  limitTo(budgetBytes: number): void;
  close(): void;
}

/** A clip to read: a file in hand before it is in the library, or a stream address of the host. */
export type ClipInput = ({ readonly blob: Blob; readonly name: string } | { readonly address: string }) & {
  /** Film track by choice, from 1; null or absent: the first that can be decoded. */
  readonly track?: number | null;
};

/** What a clip's pictures are shown as, whatever file they come from. */
export type ShownAs = Pick<ClipFacts, 'width' | 'height' | 'table'>;

export type ReadClipFacts = (input: ClipInput, signal: AbortSignal) => Promise<Result<ClipFacts>>;
export type OpenFrameSource = (
  input: ClipInput,
  options: {
    readonly budgetBytes?: number;
    /**
     * The input is a working copy of a clip that is like this: frame n of the copy is shown as the clip's frame n. A copy
     * whose frames start at other times is refused with `conflict`.
     */
    readonly standsFor?: ShownAs;
    readonly signal: AbortSignal;
  },
) => Promise<Result<FrameSource>>;
