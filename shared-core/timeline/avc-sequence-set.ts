import { avcContent, avcRecordSets, avcTypes, avcUnits, avcUnitType } from './avc-units';
import { BitReader } from './bit-reader';

/** What an H.264 sequence parameter set says of its pictures (ITU-T H.264, 7.3.2.1.1). */
export interface AvcSequenceSet {
  readonly id: number;
  readonly profile: number;
  /** The byte of constraint flags, set 0 first. */
  readonly constraints: number;
  /** Ten times the level. */
  readonly level: number;
  /** Three colour planes coded apart: slices then say which is theirs. */
  readonly planesApart: boolean;
  readonly frameNumBits: number;
  /** How the order of showing is said: 0, 1, or 2 where it is that of decoding. */
  readonly orderType: number;
  readonly referenceFrames: number;
  /** Whether no picture is coded as fields, nor in field macroblocks. */
  readonly framesOnly: boolean;
  /** Macroblocks of a frame. */
  readonly macroblocks: number;
  /** Bits of the set's content before the flag that says whether usability information follows. */
  readonly usabilityAt: number;
}

/** Reads a set from its unit; null where it is cut off or makes no sense. */
export function readSequenceSet(unit: Uint8Array): AvcSequenceSet | null {
  const bits = new BitReader(avcContent(unit));
  const profile = bits.read(8);
  const constraints = bits.read(8);
  const level = bits.read(8);
  const id = bits.golomb();
  let planesApart = false;
  if (highProfiles.has(profile)) {
    const chroma = bits.golomb();
    if (chroma === 3) planesApart = bits.read(1) === 1;
    bits.golomb();
    bits.golomb();
    bits.read(1);
    const lists = bits.read(1) === 0 ? 0 : chroma === 3 ? 12 : 8;
    for (let n = 0; n < lists; n++) {
      const given = bits.read(1);
      if (given === 1) skipScaling(bits, n < 6 ? 16 : 64);
    }
  }
  const frameNumBits = bits.golomb() + 4;
  const orderType = bits.golomb();
  if (orderType === 0) bits.golomb();
  else if (orderType === 1) {
    bits.read(1);
    bits.golomb();
    bits.golomb();
    const offsets = bits.golomb();
    for (let n = 0; n < Math.min(offsets, 255); n++) bits.golomb();
  }
  const referenceFrames = bits.golomb();
  bits.read(1);
  const across = bits.golomb() + 1;
  const units = bits.golomb() + 1;
  const framesOnly = bits.read(1) === 1;
  if (!framesOnly) bits.read(1);
  bits.read(1);
  if (bits.read(1) === 1) for (let n = 0; n < 4; n++) bits.golomb();
  if (bits.atEnd || frameNumBits > 16 || id > 31) return null;
  const macroblocks = across * units * (framesOnly ? 1 : 2);
  return {
    ...{ id, profile, constraints, level, planesApart, frameNumBits, orderType, referenceFrames, framesOnly },
    ...{ macroblocks, usabilityAt: bits.at },
  };
}

/** The first set in a decoder configuration record (ISO/IEC 14496-15, 5.3.3.1) or in data with start codes (annex B). */
export function firstSequenceSet(bytes: Uint8Array): AvcSequenceSet | null {
  for (const unit of bytes[0] === 1 ? avcRecordSets(bytes) : avcUnits(bytes, null))
    if (avcUnitType(unit) === avcTypes.sequenceSet) return readSequenceSet(unit);
  return null;
}

/** Profiles whose sets say more of colour (7.3.2.1.1). */
const highProfiles = new Set([100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135]);

/** 7.3.2.1.1.1: a list that says 0 is at its end. */
function skipScaling(bits: BitReader, size: number): void {
  let last = 8;
  for (let n = 0; n < size; n++) {
    const next = (last + bits.signedGolomb() + 256) % 256;
    if (next === 0) return;
    last = next;
  }
}
