import { type AvcSequenceSet, readSequenceSet } from './avc-sequence-set';
import { avcContent, avcRecordSets, avcTypes, avcUnits, avcUnitType } from './avc-units';
import { BitReader } from './bit-reader';

/** What a packet of H.264 is to the frames that come out of a decoder. */
export type PacketPart =
  /** A whole frame: a frame picture, or both of its fields. */
  | 'frame'
  /** A frame's first field; its second follows. */
  | 'first-field'
  | 'second-field'
  /** A field whose other one is missing, or nothing that can be read: no frame comes of it. */
  | 'none';

/** One coded picture: what its first slice says (ITU-T H.264, 7.3.3). */
interface Picture {
  readonly frameNum: number;
  readonly field: 'top' | 'bottom' | null;
  readonly reference: boolean;
  readonly instant: boolean;
}

/** Bytes of a slice in which its header's first fields stand: four Exp-Golomb codes and a number of 16 bits. */
const headerBytes = 32;

/**
 * Tells which packets of an H.264 film are frames and which are single fields of them, packet by packet in decoding order.
 * Two fields are one frame when they follow one another, one is the top and one the bottom field, they bear the same
 * `frame_num`, both or neither may be leant on, and the second is no instant refresh (7.4.1.2.4; 3.30, complementary field
 * pair). `record` is the decoder configuration record, or parameter sets with start codes, where the film has any outside its
 * packets. The answers are complete after `end`.
 */
export function createFieldPairing(record: Uint8Array | null): {
  see(packet: Uint8Array): void;
  end(): readonly PacketPart[];
} {
  const sequenceSets = new Map<number, AvcSequenceSet>();
  const setOfPictureSet = new Map<number, number>();
  const parts: PacketPart[] = [];
  /** A first field that waits for its second, and the packet it came in. */
  let waiting: { readonly picture: Picture; readonly packet: number } | null = null;

  const learn = (unit: Uint8Array): void => {
    if (avcUnitType(unit) === avcTypes.sequenceSet) {
      const set = readSequenceSet(unit);
      if (set) sequenceSets.set(set.id, set);
    } else if (avcUnitType(unit) === avcTypes.pictureSet) {
      const bits = new BitReader(avcContent(unit.subarray(0, headerBytes)));
      setOfPictureSet.set(bits.golomb(), bits.golomb());
    }
  };
  if (record)
    for (const unit of record[0] === 1 ? avcRecordSets(record) : avcUnits(record, null)) learn(unit);

  const readSlice = (unit: Uint8Array): Picture | null => {
    const bits = new BitReader(avcContent(unit.subarray(0, headerBytes)));
    bits.golomb();
    bits.golomb();
    const set = sequenceSets.get(setOfPictureSet.get(bits.golomb()) ?? -1);
    if (!set) return null;
    if (set.planesApart) bits.read(2);
    const frameNum = bits.read(set.frameNumBits);
    const isField = !set.framesOnly && bits.read(1) === 1;
    const field = isField ? (bits.read(1) === 1 ? 'bottom' : 'top') : null;
    const reference = (((unit[0] as number) >> 5) & 3) !== 0;
    return { frameNum, field, reference, instant: avcUnitType(unit) === avcTypes.instant };
  };
  const isSecondOf = (first: Picture, second: Picture): boolean =>
    second.field !== null &&
    second.field !== first.field &&
    second.frameNum === first.frameNum &&
    second.reference === first.reference &&
    !second.instant;

  return {
    see(packet) {
      const here = parts.length;
      parts.push('none');
      let last: Picture | null = null;
      for (const unit of avcUnits(packet, lengthsIn(packet, record))) {
        learn(unit);
        const type = avcUnitType(unit);
        if (type !== avcTypes.slice && type !== avcTypes.firstPart && type !== avcTypes.instant) continue;
        const picture = readSlice(unit);
        // one more slice of the same picture
        if (!picture || (last && picture.field === last.field)) continue;
        last = picture;
        if (picture.field === null) {
          waiting = null;
          parts[here] = 'frame';
        } else if (waiting && isSecondOf(waiting.picture, picture)) {
          const before = waiting.packet;
          waiting = null;
          if (before === here) parts[here] = 'frame';
          else {
            parts[before] = 'first-field';
            parts[here] = 'second-field';
          }
        } else waiting = { picture, packet: here };
      }
    },
    end: () => parts,
  };
}

/** Packets bear start codes or lengths; a stream taken out of its container may bear either, whatever the record says. */
function lengthsIn(packet: Uint8Array, record: Uint8Array | null): number | null {
  const starts =
    packet[0] === 0 && packet[1] === 0 && (packet[2] === 1 || (packet[2] === 0 && packet[3] === 1));
  return record?.[0] === 1 && !starts ? ((record[4] ?? 3) & 3) + 1 : starts ? null : 4;
}
