/** Bytes at the end of a file within which a phone's list of what it appended stands. */
export const phoneTrailerWithin = 65_536;

/**
 * Whether a phone says of its film that a stretch of it is slowed and the rest is not: `Super_SlowMotion_Data` in the list
 * that Samsung's camera appends to an MP4. `end` is the end of the file. Source: androidx/media, `SefReader` (Apache-2.0): the
 * file ends with the list's length and "SEFT"; the list is "SEFH", a version, a count, and entries of 12 bytes: two of
 * nothing, a kind, a distance, a length, all little-endian. Kind 0x0b00 is the one asked for.
 */
export function isSlowedInPart(end: Uint8Array): boolean {
  const view = new DataView(end.buffer, end.byteOffset, end.byteLength);
  if (end.byteLength < 20 || nameAt(end, end.byteLength - 4) !== 'SEFT') return false;
  const list = end.byteLength - 8 - view.getUint32(end.byteLength - 8, true);
  if (list < 0 || nameAt(end, list) !== 'SEFH') return false;
  const count = view.getUint32(list + 8, true);
  for (let n = 0; n < count; n++) {
    const entry = list + 12 + 12 * n;
    if (entry + 12 > end.byteLength - 8) return false;
    if (view.getUint16(entry + 2, true) === superSlowMotion) return true;
  }
  return false;
}

const superSlowMotion = 0x0b00;
const nameAt = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
