import { reorderDepthOfLevel, reorderDepthOfTimes, withReorderDepth } from '#core/timeline/avc-reordering';
import { firstSequenceSet } from '#core/timeline/avc-sequence-set';
import { avcLengthBytes, avcTypes, avcUnits, avcUnitType } from '#core/timeline/avc-units';
import { bytesOf } from './buffer-bytes';
import type { FilmPacket, PacketIndex } from './packet-index';

interface Feed {
  readonly config: VideoDecoderConfig;
  readonly index: PacketIndex;
}

/**
 * H.264 told how many of its frames are put in order, where it does not say itself: a decoder that has to find out loses
 * frames meanwhile, after every jump others. The times of the pictures tell it; `timesTellNothing` where those are of
 * decoding: then it is what the stream's level allows.
 */
export async function tellReordering({ config, index }: Feed, timesTellNothing: boolean): Promise<Feed> {
  if (!/^avc/.test(config.codec)) return { config, index };
  const record = bytesOf(config.description);
  const sets = record ?? (await index.read(index.order.keyOfFrame[0] ?? 0))?.data ?? null;
  const set = sets && firstSequenceSet(sets);
  if (!set) return { config, index };
  const depth = timesTellNothing
    ? reorderDepthOfLevel(set)
    : reorderDepthOfTimes(index.pictures.map(({ tick }) => tick));
  if (depth === 0) return { config, index };
  const lengthBytes = avcLengthBytes(record);
  const mend = ({ type, data }: FilmPacket): FilmPacket => ({
    type,
    data: type === 'key' ? mendUnits(data, lengthBytes, depth) : data,
  });
  return {
    config: record ? { ...config, description: mendRecord(record, depth) } : config,
    index: {
      ...index,
      read: async (coded) => {
        const packet = await index.read(coded);
        return packet && mend(packet);
      },
      async *readFrom(coded) {
        for await (const packet of index.readFrom(coded)) yield mend(packet);
      },
    },
  };
}

/** A decoder configuration record whose sequence sets say it (ISO/IEC 14496-15, 5.3.3.1). */
function mendRecord(record: Uint8Array, depth: number): Uint8Array<ArrayBuffer> {
  const count = (record[5] as number) & 31;
  const out = [...record.subarray(0, 6)];
  let at = 6;
  for (let n = 0; n < count; n++) {
    const length = ((record[at] as number) << 8) | (record[at + 1] as number);
    const unit = withReorderDepth(record.subarray(at + 2, at + 2 + length), depth);
    out.push(unit.length >> 8, unit.length & 255, ...unit);
    at += 2 + length;
  }
  return Uint8Array.from([...out, ...record.subarray(at)]);
}

/** A key picture whose own sequence sets say it; the data itself where it has none. */
function mendUnits(data: Uint8Array, lengthBytes: number | null, depth: number): Uint8Array {
  const units = [...avcUnits(data, lengthBytes)];
  if (!units.some((unit) => avcUnitType(unit) === avcTypes.sequenceSet)) return data;
  const mended = units.map((unit) => withReorderDepth(unit, depth));
  const head = lengthBytes ?? 4;
  const out = new Uint8Array(mended.reduce((sum, unit) => sum + head + unit.length, 0));
  let at = 0;
  for (const unit of mended) {
    const size = lengthBytes === null ? 1 : unit.length;
    for (let n = 0; n < head; n++) out[at + n] = Math.floor(size / 256 ** (head - 1 - n)) % 256;
    out.set(unit, at + head);
    at += head + unit.length;
  }
  return out;
}
