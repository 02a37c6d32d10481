/** A box of an ISO media file inside a larger piece of bytes. */
export interface Box {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** The first box of a name inside another. */
export function child(view: DataView, parent: Box, name: string): Box | undefined {
  return children(view, parent).find((box) => box.name === name);
}

/** The boxes that lie in another, up to the first that is damaged. */
export function children(view: DataView, parent: Box): Box[] {
  const found: Box[] = [];
  let at = parent.from;
  while (at + 8 <= parent.to) {
    const size = view.getUint32(at);
    const name = String.fromCharCode(...[4, 5, 6, 7].map((place) => view.getUint8(at + place)));
    const end = size === 0 ? parent.to : at + size;
    // no header is longer than 4 GB, so the long form (size 1) counts as damaged here
    if (end < at + 8 || end > parent.to) break;
    found.push({ name, from: at + 8, to: end });
    at = end;
  }
  return found;
}

/** Whether a box has so many bytes, and the file too. */
export const fits = (view: DataView, box: Box, bytes: number): boolean =>
  box.from + bytes <= Math.min(box.to, view.byteLength);
