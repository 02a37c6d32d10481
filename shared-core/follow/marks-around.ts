/** The pictures that are next to one, itself where it is among them, and how far it lies from the first to the second: 0 to 1. */
export interface Around {
  readonly before: number | null;
  readonly after: number | null;
  /** 0 where one of them is missing, or both are the same. */
  readonly share: number;
}

/** What lies around a picture; `frames` ascending, by index. */
export function around(frames: readonly number[], index: number): Around {
  const before = frames.findLast((each) => each <= index) ?? null;
  const after = frames.find((each) => each >= index) ?? null;
  const share = before !== null && after !== null && after > before ? (index - before) / (after - before) : 0;
  return { before, after, share };
}
