/**
 * The units of a coded H.264 picture, each from its header byte on (ITU-T H.264, 7.3.1). `lengthBytes` is how many bytes give
 * a unit's length (ISO/IEC 14496-15, 5.3.3.1), or null for data with start codes (annex B).
 */
export function avcUnits(data: Uint8Array, lengthBytes: number | null): Generator<Uint8Array> {
  return lengthBytes === null ? startCodeUnits(data) : lengthUnits(data, lengthBytes);
}

/** How many bytes give a unit's length, from a decoder configuration record; null when there is no record. */
export function avcLengthBytes(record: Uint8Array | null): number | null {
  return record?.[0] === 1 ? ((record[4] ?? 3) & 3) + 1 : null;
}

/** Type of a unit (table 7-1), from its header byte. */
export const avcUnitType = (unit: Uint8Array): number => (unit[0] ?? 0) & 31;
export const avcTypes = { slice: 1, firstPart: 2, instant: 5, sequenceSet: 7, pictureSet: 8 } as const;

/** The parameter sets that a decoder configuration record holds. */
export function* avcRecordSets(record: Uint8Array): Generator<Uint8Array> {
  let at = 5;
  for (const mask of [31, 255]) {
    const count = (record[at] as number) & mask;
    at += 1;
    for (let n = 0; n < count && at + 2 < record.length; n++) {
      const length = ((record[at] as number) << 8) | (record[at + 1] as number);
      yield record.subarray(at + 2, at + 2 + length);
      at += 2 + length;
    }
  }
}

/** A unit's content after its header byte; a byte 3 after two zeros is there only so that no start code appears (7.4.1). */
export function avcContent(unit: Uint8Array): Uint8Array {
  return unit
    .subarray(1)
    .filter((byte, at, all) => !(byte === 3 && at >= 2 && all[at - 1] === 0 && all[at - 2] === 0));
}

function* lengthUnits(data: Uint8Array, lengthBytes: number): Generator<Uint8Array> {
  let at = 0;
  while (at + lengthBytes < data.length) {
    let length = 0;
    for (let n = 0; n < lengthBytes; n++) length = length * 256 + (data[at + n] as number);
    yield data.subarray(at + lengthBytes, at + lengthBytes + Math.max(1, length));
    at += lengthBytes + Math.max(1, length);
  }
}

function* startCodeUnits(data: Uint8Array): Generator<Uint8Array> {
  let from = -1;
  for (let at = data.indexOf(1, 2); at >= 0; at = data.indexOf(1, at + 1)) {
    if (data[at - 1] !== 0 || data[at - 2] !== 0) continue;
    if (from >= 0) yield data.subarray(from, at - 2);
    from = at + 1;
  }
  if (from >= 0 && from < data.length) yield data.subarray(from);
}
