/** Steps looked back on: two or three seconds of walking. */
const remembered = 24;
/**
 * Our default: a clip can't keep up when more than a quarter of the last steps took longer than this, or all of them did on
 * average (few stalls, but of seconds). A step is felt as
 * immediate up to about 100 ms (common rule of interface design, from memory).
 */
const slowAfterMs = 100;

export interface StepWatch {
  /** A picture came after so many milliseconds; 0 when it was there already. Jumps are passed over. */
  note(frame: number, milliseconds: number): void;
  /**
   * A frame is asked for, and the picture of the one last asked for has come; times in milliseconds. Steps that overtake the
   * pictures (a held key) count as one wait, from the first of them.
   */
  asked(frame: number, at: number): void;
  shown(at: number): void;
}

/** Watches whether a clip keeps up with the coach's steps; tells once, with the time a slow step takes. */
export function createStepWatch(onSlow: (milliseconds: number) => void): StepWatch {
  const waits: number[] = [];
  let last: number | null = null;
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
    note(frame, milliseconds) {
      const step = last !== null && Math.abs(frame - last) <= 2;
      last = frame;
      if (step) waited(milliseconds);
    },
    asked(frame, at) {
      const step = lastAsked !== null && Math.abs(frame - lastAsked) <= 2;
      lastAsked = frame;
      waitingSince = step ? (waitingSince ?? at) : null;
    },
    shown(at) {
      if (waitingSince !== null) waited(at - waitingSince);
      waitingSince = null;
    },
  };
}
