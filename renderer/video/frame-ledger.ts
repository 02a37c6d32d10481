/** Counts decoder pictures that are open, so that a test can prove that every one is closed. */
let open = 0;

/** Takes note of a picture this code must close. */
export function opened(frame: VideoFrame): VideoFrame {
  open += 1;
  return frame;
}

export function closeFrame(frame: VideoFrame): void {
  frame.close();
  open -= 1;
}

/** Decoder pictures open now, over all sources of this window. */
export const openVideoFrames = (): number => open;
