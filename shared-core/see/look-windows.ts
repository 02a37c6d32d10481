import type { Square } from './square';

/** Windows are so high, shares of the picture's shorter side: a body of a third of the width fills most of one. Our choice. */
const sizes = [1, 0.6] as const;
/** Neighbouring windows cover this share of each other, so that a body cut by one lies whole in another. */
const overlap = 0.5;

/** The whole picture, then ever smaller upright windows over it: the detector finds only what fills much of its square. */
export function lookWindows(width: number, height: number): readonly Square[] {
  const windows: Square[] = [{ x: width / 2, y: height / 2, side: Math.max(width, height), angle: 0 }];
  for (const size of sizes) {
    const side = size * Math.min(width, height);
    const starts = (all: number): readonly number[] => {
      const count = 1 + Math.ceil(Math.max(0, all - side) / (side * (1 - overlap)));
      return Array.from({ length: count }, (_, i) => (count === 1 ? 0 : ((all - side) * i) / (count - 1)));
    };
    for (const top of starts(height))
      for (const left of starts(width))
        windows.push({ x: left + side / 2, y: top + side / 2, side, angle: 0 });
  }
  return windows;
}
