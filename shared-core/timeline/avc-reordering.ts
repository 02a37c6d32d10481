import { type AvcSequenceSet, readSequenceSet } from './avc-sequence-set';
import { avcContent, avcTypes, avcUnitType } from './avc-units';
import { BitReader } from './bit-reader';

/**
 * How many frames a decoder may have to hold back to put them in order, where the stream does not say: what its level allows
 * (ITU-T H.264, A.3.1 and table A-1, `MaxDpbFrames`), or none where the order of showing is that of decoding (8.2.1.3) or
 * every picture stands alone (E.2.1, `max_num_reorder_frames`).
 */
export function reorderDepthOfLevel(set: AvcSequenceSet): number {
  const alone = (set.constraints & 0x10) !== 0 && [44, 86, 100, 110, 122, 244].includes(set.profile);
  if (set.orderType === 2 || alone) return 0;
  const small = set.level === 11 && (set.constraints & 0x10) !== 0 && [66, 77, 88].includes(set.profile);
  const held = small ? 396 : (heldMacroblocks.find(([level]) => set.level <= level)?.[1] ?? 696_320);
  return Math.min(16, Math.floor(held / set.macroblocks));
}

/** Ten times the level, and how many macroblocks it lets a decoder hold (table A-1). */
const heldMacroblocks = [
  ...([
    [10, 396],
    [11, 900],
    [20, 2376],
    [21, 4752],
    [30, 8100],
    [31, 18_000],
    [32, 20_480],
  ] as const),
  ...([
    [41, 32_768],
    [42, 34_816],
    [50, 110_400],
    [52, 184_320],
    [62, 696_320],
  ] as const),
] as const;

/**
 * How many frames at most are decoded before one that is shown earlier, by the times of the pictures in decoding order; 0
 * where times only rise.
 */
export function reorderDepthOfTimes(ticks: readonly number[]): number {
  let depth = 0;
  // pictures shown later than one that follows them lie close behind each other: no standard holds more than 16
  ticks.forEach((tick, coded) => {
    let later = 0;
    for (let n = Math.max(0, coded - 32); n < coded; n++) if ((ticks[n] as number) > tick) later += 1;
    depth = Math.max(depth, later);
  });
  return Math.min(16, depth);
}

/**
 * A sequence parameter set that says how many frames are put in order (`max_num_reorder_frames`; E.1.1), so that a decoder
 * does not have to find it out by losing some. The unit itself where it says so already, or can't be read.
 */
export function withReorderDepth(unit: Uint8Array, depth: number): Uint8Array {
  const set = avcUnitType(unit) === avcTypes.sequenceSet ? readSequenceSet(unit) : null;
  if (!set) return unit;
  const content = avcContent(unit);
  const bits = new BitReader(content);
  bits.read(set.usabilityAt);
  const out = new BitWriter();
  if (bits.read(1) === 0) {
    copyBits(content, set.usabilityAt, out);
    // nothing else is said: aspect, overscan, signal, chroma, clock, two buffers, picture structure
    out.put(1, 1);
    out.put(0, 8);
  } else {
    skipUsability(bits);
    if (bits.atEnd || bits.read(1) === 1) return unit;
    copyBits(content, bits.at - 1, out);
  }
  out.put(1, 1);
  // vectors may reach over the edge; no limits to sizes; then the frames put in order, and all that are held
  out.put(1, 1);
  const held = Math.max(depth, set.referenceFrames, reorderDepthOfLevel(set));
  for (const value of [0, 0, 15, 15, depth, held]) out.golomb(value);
  out.put(1, 1);
  return out.unit(unit[0] ?? 0x67);
}

/** Goes over usability information up to what it says of reordering (E.1.1, E.1.2). */
function skipUsability(bits: BitReader): void {
  if (bits.read(1) === 1 && bits.read(8) === 255) bits.read(32);
  if (bits.read(1) === 1) bits.read(1);
  if (bits.read(1) === 1) {
    bits.read(4);
    if (bits.read(1) === 1) bits.read(24);
  }
  if (bits.read(1) === 1) {
    bits.golomb();
    bits.golomb();
  }
  if (bits.read(1) === 1) bits.read(65);
  let buffers = 0;
  for (let kind = 0; kind < 2; kind++) {
    if (bits.read(1) === 0) continue;
    buffers += 1;
    const count = bits.golomb() + 1;
    bits.read(8);
    for (let n = 0; n < Math.min(count, 32); n++) {
      bits.golomb();
      bits.golomb();
      bits.read(1);
    }
    bits.read(20);
  }
  if (buffers > 0) bits.read(1);
  bits.read(1);
}

function copyBits(content: Uint8Array, count: number, out: BitWriter): void {
  const bits = new BitReader(content);
  for (let n = 0; n < count; n++) out.put(bits.read(1), 1);
}

class BitWriter {
  private readonly bits: number[] = [];
  put(value: number, count: number): void {
    for (let n = count - 1; n >= 0; n--) this.bits.push((value >> n) & 1);
  }
  golomb(value: number): void {
    const length = 31 - Math.clz32(value + 1);
    this.put(0, length);
    this.put(value + 1, length + 1);
  }
  /** A unit with a header, a 3 wherever its content would look like a start code. */
  unit(header: number): Uint8Array {
    const out = [header];
    let zeros = 0;
    for (let at = 0; at < this.bits.length; at += 8) {
      let byte = 0;
      for (let n = 0; n < 8; n++) byte = byte * 2 + (this.bits[at + n] ?? 0);
      if (zeros >= 2 && byte <= 3) {
        out.push(3);
        zeros = 0;
      }
      out.push(byte);
      zeros = byte === 0 ? zeros + 1 : 0;
    }
    return Uint8Array.from(out);
  }
}
