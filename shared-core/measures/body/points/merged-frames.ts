import { keptWith } from '../../../units/kept-with';
const merged = keptWith((a: readonly number[]) => keptWith((b: readonly number[]) => merge(a, b)));

/** Two rising rows of frames as one, each frame once. Rows that many readings share are merged once. */
export function mergedFrames(a: readonly number[], b: readonly number[]): readonly number[] {
  if (a === b || b.length === 0) return a;
  if (a.length === 0) return b;
  return merged(a)(b);
}

function merge(a: readonly number[], b: readonly number[]): readonly number[] {
  const out: number[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const next = Math.min(a[i] ?? Infinity, b[j] ?? Infinity);
    if (a[i] === next) i += 1;
    if (b[j] === next) j += 1;
    out.push(next);
  }
  return out;
}
