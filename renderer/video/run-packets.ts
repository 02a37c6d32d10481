import type { FilmPacket, PacketIndex } from './packet-index';

/** The packets of one run after another, each read once. */
export interface RunPackets {
  /** Reads from this coded picture on; what was read for the run before is dropped. */
  begin(coded: number): void;
  /** The next packet. Until it is taken, asking again is the same asking. */
  next(): Promise<IteratorResult<FilmPacket, void>>;
  take(): void;
  end(): void;
}

export function runPackets({ readFrom }: Pick<PacketIndex, 'readFrom'>): RunPackets {
  let packets: AsyncGenerator<FilmPacket, void, unknown> | null = null;
  let coming: Promise<IteratorResult<FilmPacket, void>> | null = null;
  const end = (): void => {
    const ended = packets;
    packets = null;
    coming = null;
    if (ended) void ended.return().catch(() => undefined);
  };
  return {
    begin(coded) {
      end();
      packets = readFrom(coded);
    },
    next() {
      if (!packets) return Promise.resolve({ done: true, value: undefined });
      coming ??= packets.next();
      // where nobody waits for it any more, its failing is nobody's
      coming.catch(() => undefined);
      return coming;
    },
    take() {
      coming = null;
    },
    end,
  };
}
