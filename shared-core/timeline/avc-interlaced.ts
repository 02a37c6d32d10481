/**
 * Whether an H.264 sequence parameter set allows pictures coded as two fields (`frame_mbs_only_flag` is 0). Such film
 * may be interlaced; only decoding tells whether it is.
 *
 * `bytes` are a decoder configuration record (ISO/IEC 14496-15, 5.3.3.1) or coded data with start codes (ITU-T H.264,
 * annex B); the set's syntax is ITU-T H.264, 7.3.2.1.1. False where there is no set to read.
 */
export function mayBeInterlacedAvc(bytes: Uint8Array): boolean {
  const set = firstSequenceSet(bytes);
  if (!set) return false;
  const bits = new BitReader(withoutEscapes(set));
  const profile = bits.read(8);
  bits.read(16);
  bits.golomb();
  if (highProfiles.has(profile)) {
    if (bits.golomb() === 3) bits.read(1);
    bits.golomb();
    bits.golomb();
    bits.read(1);
    // scaling matrices: no camera writes them here, and reading on without them would read nonsense
    if (bits.read(1) === 1) return false;
  }
  bits.golomb();
  const order = bits.golomb();
  if (order === 0) bits.golomb();
  else if (order === 1) {
    bits.read(1);
    bits.golomb();
    bits.golomb();
    const offsets = bits.golomb();
    for (let n = 0; n < Math.min(offsets, 255); n++) bits.golomb();
  }
  bits.golomb();
  bits.read(1);
  bits.golomb();
  bits.golomb();
  return !bits.atEnd && bits.read(1) === 0;
}

/** Profiles whose sets say more of colour (7.3.2.1.1). */
const highProfiles = new Set([100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135]);
/** Type of a unit that is a sequence parameter set (table 7-1). */
const sequenceSet = 7;

function firstSequenceSet(bytes: Uint8Array): Uint8Array | null {
  if (bytes[0] === 1 && ((bytes[5] ?? 0) & 31) > 0) {
    const length = ((bytes[6] ?? 0) << 8) | (bytes[7] ?? 0);
    return bytes.subarray(9, 8 + length);
  }
  for (let at = 0; at + 4 < bytes.length; at++) {
    const starts = bytes[at] === 0 && bytes[at + 1] === 0 && bytes[at + 2] === 1;
    if (starts && ((bytes[at + 3] ?? 0) & 31) === sequenceSet) return bytes.subarray(at + 4, at + 4 + 256);
  }
  return null;
}

/** A byte 3 after two zeros is there only so that no start code appears (7.4.1). */
function withoutEscapes(bytes: Uint8Array): Uint8Array {
  return bytes.filter((byte, at) => !(byte === 3 && at >= 2 && bytes[at - 1] === 0 && bytes[at - 2] === 0));
}

class BitReader {
  private at = 0;
  constructor(private readonly bytes: Uint8Array) {}
  get atEnd(): boolean {
    return this.at >= this.bytes.length * 8;
  }
  read(count: number): number {
    let value = 0;
    for (let n = 0; n < count; n++, this.at++)
      value = value * 2 + (((this.bytes[this.at >> 3] ?? 0) >> (7 - (this.at & 7))) & 1);
    return value;
  }
  /** Exp-Golomb code (9.1), unsigned; the sign of a signed one is of no use here. */
  golomb(): number {
    let zeros = 0;
    while (zeros < 32 && !this.atEnd && this.read(1) === 0) zeros += 1;
    return 2 ** zeros - 1 + this.read(zeros);
  }
}
