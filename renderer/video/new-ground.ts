/** How much of a file has been seen: a reader that goes round in a circle sees nothing new. */
export interface Ground {
  /** Bytes from `start` up to, not including, `end` have been read. */
  read(start: number, end: number): void;
  /** Something new was found in what was read: a picture in a list. */
  found(): void;
  /** Rises with every block read for the first time and everything found. */
  seen(): number;
}

/** Small enough that a slow disk shows progress, large enough that a film of 100 GB takes a list of 100,000. */
const blockBytes = 2 ** 20;

export function createGround(): Ground {
  const blocks = new Set<number>();
  let findings = 0;
  return {
    read(start, end) {
      for (let block = Math.floor(start / blockBytes); block * blockBytes < end; block++) blocks.add(block);
    },
    found() {
      findings += 1;
    },
    seen: () => blocks.size + findings,
  };
}
