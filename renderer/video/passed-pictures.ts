import { closeFrame } from './frame-ledger';

/**
 * Pictures passed on the way to the one a jump waits for. They are copied once that one is shown, as copying takes the
 * processor from decoding it; until then they stay the decoder's own, so they have to be few.
 */
export function createPassedPictures(atMost: number, keep: (frame: number, picture: VideoFrame) => void) {
  const passed = new Map<number, VideoFrame>();
  const handOn = (frame: number, isWorthIt = true): void => {
    const picture = passed.get(frame);
    if (!picture) return;
    passed.delete(frame);
    if (isWorthIt) keep(frame, picture);
    else closeFrame(picture);
  };
  return {
    has: (frame: number): boolean => passed.has(frame),
    count: (): number => passed.size,
    hasRoom: (): boolean => passed.size < atMost,
    add(frame: number, picture: VideoFrame): void {
      passed.set(frame, picture);
    },
    /** One of them, where it is there, is asked for itself. */
    handOn,
    /** All go: to be copied where they are worth it, else closed. */
    release(isWorthIt: (frame: number) => boolean): void {
      for (const frame of [...passed.keys()]) handOn(frame, isWorthIt(frame));
    },
  };
}
