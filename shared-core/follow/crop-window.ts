import type { MarkedPoint } from './marked-points';

/** The part of a picture to look at: its first pixel, and its size. */
export interface CropWindow {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Limbs swing beyond the straight line between two marks: this much of the body length is looked at around it. Our choice. */
const marginShare = 0.22;

/**
 * Where the swimmer is on each frame from `first` to `last`: around every landmark on the straight way between its
 * marks, with a margin, inside the picture. All windows have one size, even in both directions, so that pictures can
 * be compared; they move with the swimmer. Needs at least one mark.
 */
export function cropWindows(
  marks: readonly MarkedPoint[],
  first: number,
  last: number,
  bodyLength: number,
  picture: { readonly width: number; readonly height: number },
): readonly CropWindow[] {
  const boxes = Array.from({ length: last - first + 1 }, (_, i) => boxOn(marks, first + i));
  const margin = marginShare * bodyLength;
  const even = (size: number, most: number): number => Math.min(most, 2 * Math.ceil((size + 2 * margin) / 2));
  const width = even(Math.max(...boxes.map((box) => box.right - box.left)), picture.width);
  const height = even(Math.max(...boxes.map((box) => box.bottom - box.top)), picture.height);
  return boxes.map((box) => ({
    x: inside((box.left + box.right - width) / 2, picture.width - width),
    y: inside((box.top + box.bottom - height) / 2, picture.height - height),
    width,
    height,
  }));
}

const inside = (place: number, most: number): number => Math.max(0, Math.min(most, Math.round(place)));

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The box of all landmarks on the straight way between the marks around a frame. */
function boxOn(marks: readonly MarkedPoint[], frame: number): Box {
  const names = new Set(marks.map(({ landmark }) => landmark));
  const xs: number[] = [];
  const ys: number[] = [];
  for (const name of names) {
    const own = marks.filter(({ landmark }) => landmark === name);
    const before = own.findLast((each) => each.frame <= frame) ?? own[0];
    const after = own.find((each) => each.frame >= frame) ?? own.at(-1);
    if (!before || !after) continue;
    const share = after.frame > before.frame ? (frame - before.frame) / (after.frame - before.frame) : 0;
    const kept = Math.max(0, Math.min(1, share));
    xs.push(before.x + kept * (after.x - before.x));
    ys.push(before.y + kept * (after.y - before.y));
  }
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
