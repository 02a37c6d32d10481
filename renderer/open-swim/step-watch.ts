/** Steps looked back on: two or three seconds of walking. */
const remembered = 24;
/**
 * Our default: a clip can't keep up when more than a quarter of the last steps took longer than this, or all of them did on
 * average (few stalls, but of seconds). A step is felt as immediate up to about 100 ms (common rule of interface design, from memory).
 */
const slowAfterMs = 100;

/** One frame asked for. */
interface AskedStep {
  /** Its picture is there and is being drawn; it was not overtaken. */
  came(): void;
  /** The screen has taken it, at so many milliseconds. */
  shown(at: number): void;
}

export interface StepWatch {
  /**
   * A frame is asked for, at so many milliseconds. Steps that overtake the pictures (a held key) count as one wait, from the
   * first of them. Jumps are passed over.
   */
  asked(frame: number, at: number): AskedStep;
}

/** Watches whether a clip keeps up with the coach's steps; tells once, with the time a slow step takes. */
export function createStepWatch(onSlow: (milliseconds: number) => void): StepWatch {
  const waits: number[] = [];
  let told = false;
  let lastAsked: number | null = null;
  let waitingSince: number | null = null;
  const waited = (milliseconds: number): void => {
    if (told) return;
    waits.push(milliseconds);
    if (waits.length > remembered) waits.shift();
    if (waits.length < remembered) return;
    const slow = waits.filter((each) => each > slowAfterMs).sort((a, b) => a - b);
    const mean = waits.reduce((sum, each) => sum + each, 0) / remembered;
    if (slow.length <= remembered / 4 && mean <= slowAfterMs) return;
    told = true;
    onSlow(slow.length > remembered / 4 ? (slow[slow.length >> 1] ?? 0) : mean);
  };
  return {
    asked(frame, at) {
      const step = lastAsked !== null && Math.abs(frame - lastAsked) <= 2;
      lastAsked = frame;
      const since = step ? (waitingSince ?? at) : null;
      waitingSince = since;
      return {
        came() {
          waitingSince = null;
        },
        shown(then) {
          if (since !== null) waited(then - since);
        },
      };
    },
  };
}
