import type { RunPlace } from './decoding-plan';

/** What the pump asks of whoever steers it. */
export interface PumpSteering {
  /** The frame to get next, or null when there is nothing to decode now. `run` is where the decoder stands. */
  next(run: RunPlace | null, isPending: (frame: number) => boolean): number | null;
  /** Whether a run standing at `run` gives this frame by being fed on. */
  comesFrom(run: RunPlace | null, frame: number): boolean;
  wants(frame: number): boolean;
  /** Whether a picture still inside the decoder is needed before more are fed for other reasons. */
  needsNow(frame: number): boolean;
  /** The frame the coach waits for after a jump: others are not worth finishing meanwhile. */
  jumpedTo(): number | null;
  /** A decoded picture of a wanted frame; the receiver closes it. */
  deliver(frame: number, picture: VideoFrame): void;
  /** Resolves when there is room for more pictures on their way. */
  room(): Promise<void>;
  /** The decoder passed over these frames: they can't be decoded. */
  lost(frames: readonly number[]): void;
  /** The film can't be read at the moment. */
  unreadable(problem: unknown): void;
}

export interface DecoderPump {
  /** Looks at the plan again. */
  wake(): void;
  /** Begins again with another decoder, at the group's start, with nothing left out: a picture did not come. */
  again(): void;
  close(): void;
}
