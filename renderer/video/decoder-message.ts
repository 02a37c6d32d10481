/** What the window asks of the worker that holds a decoder. `turn` counts how often it was made ready anew. */
export type ToDecoderWorker =
  /** Drops everything in hand and makes ready for a key picture. */
  | { readonly kind: 'begin'; readonly turn: number; readonly config: VideoDecoderConfig }
  | { readonly kind: 'decode'; readonly chunk: CodedChunk }
  | { readonly kind: 'flush'; readonly id: number }
  /** Answered with a sign of life. */
  | { readonly kind: 'ping' }
  | { readonly kind: 'close' };

/** A coded picture on its way into a decoder. */
export interface CodedChunk {
  readonly type: EncodedVideoChunkType;
  readonly timestamp: number;
  readonly data: Uint8Array;
}

export type FromDecoderWorker =
  /** A decoded picture; whoever receives it closes it. */
  | { readonly kind: 'picture'; readonly turn: number; readonly picture: VideoFrame }
  /** So many of the turn's pictures have been taken up by the decoder. */
  | { readonly kind: 'taken'; readonly turn: number; readonly taken: number }
  /** Everything fed before the flush has come out, or the decoder was made ready anew meanwhile. */
  | { readonly kind: 'flushed'; readonly id: number }
  | { readonly kind: 'alive' }
  /** The decoder refused a picture or failed. */
  | { readonly kind: 'died'; readonly turn: number };
