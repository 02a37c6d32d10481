import { type EncodedPacket, EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import { type CodedPicture, orderPictures, type PictureOrder } from '#core/timeline/picture-order';

/** Every coded picture of a film in decoding order, without its data, and the frames they make. */
export interface PacketIndex {
  readonly order: PictureOrder;
  readonly pictures: readonly CodedPicture[];
  /** Pictures the container lists but the file no longer holds. */
  readonly lost: number;
  /** The packet with its data; null when the file ends before it. */
  read(coded: number): Promise<EncodedPacket | null>;
  /** Packets with data from `coded` on, in decoding order. */
  readFrom(coded: number): AsyncGenerator<EncodedPacket, void, unknown>;
}

/**
 * Reads where and when every coded picture is. One pass over the container's metadata. `endTick` is where an edit
 * list ends the showing.
 */
export async function readPacketIndex(
  track: InputVideoTrack,
  endTick: number,
  signal: AbortSignal,
): Promise<PacketIndex> {
  const sink = new EncodedPacketSink(track);
  const ticksPerSecond = await track.getTimeResolution();
  const entries: EncodedPacket[] = [];
  const listed = sink.packets(undefined, undefined, { metadataOnly: true });
  try {
    for await (const packet of listed) {
      signal.throwIfAborted();
      entries.push(packet);
    }
  } catch (problem) {
    signal.throwIfAborted();
    // a damaged tail ends the film where it was still readable; with nothing readable the problem is the caller's
    if (entries.length === 0) throw problem;
  }

  const read = async (coded: number): Promise<EncodedPacket | null> => {
    const before = entries[coded - 1];
    return before ? await sink.getNextPacket(before) : await sink.getFirstPacket();
  };
  const held = await countHeld(entries.length, read);
  const pictures = entries.slice(0, held).map(
    (packet): CodedPicture => ({
      tick: Math.round(packet.timestamp * ticksPerSecond),
      durationTicks: Math.round(packet.duration * ticksPerSecond),
      key: packet.type === 'key',
    }),
  );
  return {
    order: orderPictures(pictures, ticksPerSecond, endTick),
    pictures,
    lost: entries.length - held,
    read,
    async *readFrom(coded) {
      const first = await read(coded);
      if (first) yield* sink.packets(first);
    },
  };
}

/**
 * How many packets the file really holds. Packets lie in the file in decoding order, so a cut-off file holds the
 * first few: found by halving, after a first look at the last one.
 */
async function countHeld(
  count: number,
  read: (coded: number) => Promise<EncodedPacket | null>,
): Promise<number> {
  const isHeld = async (coded: number): Promise<boolean> => {
    try {
      return (await read(coded)) !== null;
    } catch (problem) {
      if (problem instanceof RangeError) return false;
      throw problem;
    }
  };
  if (count === 0 || (await isHeld(count - 1))) return count;
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (await isHeld(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}
