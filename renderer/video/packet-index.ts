import { type EncodedPacket, EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import { type CodedPicture, orderPictures, type PictureOrder } from '#core/timeline/picture-order';
import type { Ground } from './new-ground';

/** A coded picture with its data. */
export type FilmPacket = Pick<EncodedPacket, 'type' | 'data'>;

/** Nine hours at 60 a second. A longer list is a mistake in the file, or film to be cut first. */
export const mostPictures = 2_000_000;
/** Listing stops this often for a moment, so that its signs of life get out. */
const breathEvery = 20_000;

/** The container lists more pictures than can be held. */
export class TooManyPictures extends Error {
  constructor() {
    super(`more than ${mostPictures} pictures are listed`);
    this.name = 'TooManyPictures';
  }
}

/** Every coded picture of a film in decoding order, without its data, and the frames they make. */
export interface PacketIndex {
  readonly order: PictureOrder;
  readonly pictures: readonly CodedPicture[];
  /** Pictures the container lists but the file no longer holds. */
  readonly lost: number;
  /** The list could only be read up to here: wrong bytes stand in the file's own order, and more pictures may come after. */
  readonly brokeOff?: boolean;
  /** The packet with its data; null when the file ends before it. */
  read(coded: number): Promise<FilmPacket | null>;
  /** Packets with data from `coded` on, in decoding order. */
  readFrom(coded: number): AsyncGenerator<FilmPacket, void, unknown>;
}

/**
 * Reads where and when every coded picture is. One pass over the container's metadata. `endTick` is where an edit
 * list ends the showing.
 */
export async function readPacketIndex(
  track: InputVideoTrack,
  endTick: number,
  ground: Ground,
  signal: AbortSignal,
): Promise<PacketIndex> {
  const sink = new EncodedPacketSink(track);
  const ticksPerSecond = await track.getTimeResolution();
  const entries: EncodedPacket[] = [];
  let brokeOff = false;
  const listed = sink.packets(undefined, undefined, { metadataOnly: true });
  try {
    for await (const packet of listed) {
      signal.throwIfAborted();
      if (entries.push(packet) > mostPictures) throw new TooManyPictures();
      ground.found();
      if (entries.length % breathEvery === 0) await new Promise((resolve) => setTimeout(resolve, 0));
    }
  } catch (problem) {
    signal.throwIfAborted();
    // with nothing readable the problem is the caller's
    if (entries.length === 0 || problem instanceof TooManyPictures) throw problem;
    brokeOff = true;
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
    brokeOff,
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
