/**
 * Whether no other picture leans on this one, so that it may be left out of decoding without harm: every slice of the coded
 * H.264 picture says so (`nal_ref_idc` 0; ITU-T H.264, 7.4.1). `lengthBytes` is how many bytes give a unit's length (ISO/IEC
 * 14496-15, 5.3.3.1), or null for data with start codes (annex B). False where nothing can be read.
 */
export function isDisposableAvc(data: Uint8Array, lengthBytes: number | null): boolean {
  let slices = 0;
  for (const header of lengthBytes === null ? startCodeUnits(data) : lengthUnits(data, lengthBytes)) {
    const type = header & 31;
    // a slice, or the first part of one (table 7-1); a key picture's (5) is never disposable
    if (type === 5) return false;
    if (type !== 1 && type !== 2) continue;
    if (((header >> 5) & 3) !== 0) return false;
    slices += 1;
  }
  return slices > 0;
}

/** Whether decoding starts anew with this coded H.264 picture: nothing after it leans on anything before it (type 5, 7.4.1.2.4). */
export function isInstantAvc(data: Uint8Array, lengthBytes: number | null): boolean {
  for (const header of lengthBytes === null ? startCodeUnits(data) : lengthUnits(data, lengthBytes)) {
    if ((header & 31) === 5) return true;
  }
  return false;
}

/** How many bytes give a unit's length, from a decoder configuration record; null when there is no record. */
export function avcLengthBytes(record: Uint8Array | null): number | null {
  return record?.[0] === 1 ? ((record[4] ?? 3) & 3) + 1 : null;
}

/** First byte of each unit. */
function* lengthUnits(data: Uint8Array, lengthBytes: number): Generator<number> {
  let at = 0;
  while (at + lengthBytes < data.length) {
    let length = 0;
    for (let n = 0; n < lengthBytes; n++) length = length * 256 + (data[at + n] ?? 0);
    yield data[at + lengthBytes] ?? 0;
    at += lengthBytes + Math.max(1, length);
  }
}

function* startCodeUnits(data: Uint8Array): Generator<number> {
  for (let at = 0; at + 3 < data.length; at++) {
    if (data[at] !== 0 || data[at + 1] !== 0 || data[at + 2] !== 1) continue;
    yield data[at + 3] ?? 0;
    at += 3;
  }
}
