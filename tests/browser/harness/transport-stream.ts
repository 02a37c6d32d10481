/** One packet of a film in a transport stream: where a picture is shown and decoded, in ticks of 1/90,000 s. */
export interface StreamedPicture {
  readonly data: Uint8Array;
  /** Null: the packet bears no time, as second fields of some cameras. */
  readonly shown: number | null;
  readonly decoded: number;
}

const filmId = 0x1011;
const programId = 0x100;

/**
 * A transport stream with one film track (ISO/IEC 13818-1). `timed`: every packet has a time code of four bytes before it, as
 * cameras write it on cards (.mts).
 */
export function transportStream(
  pictures: readonly StreamedPicture[],
  { timed = false, streamType = 0x1b }: { readonly timed?: boolean; readonly streamType?: number } = {},
): Uint8Array {
  const counters = new Map<number, number>();
  const out: Uint8Array[] = [];
  const write = (id: number, start: boolean, clock: number | null, payload: Uint8Array): number => {
    const count = counters.get(id) ?? 0;
    counters.set(id, (count + 1) % 16);
    const packet = new Uint8Array(188).fill(0xff);
    packet.set([0x47, (start ? 0x40 : 0) | (id >> 8), id & 0xff]);
    const clockBytes = clock === null ? 0 : 8;
    let room = 184 - clockBytes;
    let adaptation = clockBytes;
    if (payload.length < room) {
      const spare = room - payload.length;
      adaptation = clockBytes + spare;
      room = payload.length;
    }
    packet[3] = (adaptation > 0 ? 0x30 : 0x10) | count;
    if (adaptation > 0) {
      packet[4] = adaptation - 1;
      if (adaptation > 1) packet[5] = clock === null ? 0 : 0x10;
      if (clock !== null) {
        packet.set(
          [clock / 2 ** 25, clock / 2 ** 17, clock / 2 ** 9, clock / 2, (clock % 2) * 128 + 0x7e, 0],
          6,
        );
      }
    }
    packet.set(payload.subarray(0, room), 188 - room);
    if (timed) out.push(Uint8Array.of(0, 0, 0, 0));
    out.push(packet);
    return room;
  };
  const table = (id: number, section: readonly number[]): void => {
    const body = Uint8Array.from(section);
    const sum = checksum(body);
    const whole = Uint8Array.from([0, ...body, sum >>> 24, sum >>> 16, sum >>> 8, sum]);
    const padded = new Uint8Array(184).fill(0xff);
    padded.set(whole);
    write(id, true, null, padded);
  };
  pictures.forEach(({ data, shown, decoded }, n) => {
    if (n % 20 === 0) {
      table(0, [0, 0xb0, 13, 0, 1, 0xc1, 0, 0, 0, 1, 0xe0 | (programId >> 8), programId & 0xff]);
      const film = [streamType, 0xe0 | (filmId >> 8), filmId & 0xff, 0xf0, 0];
      table(programId, [
        2,
        0xb0,
        18,
        0,
        1,
        0xc1,
        0,
        0,
        0xe0 | (filmId >> 8),
        filmId & 0xff,
        0xf0,
        0,
        ...film,
      ]);
    }
    const times = shown === null ? [] : [...stamp(3, shown), ...stamp(1, decoded)];
    const head = [0, 0, 1, 0xe0, 0, 0, 0x80, shown === null ? 0 : 0xc0, times.length, ...times];
    const packet = new Uint8Array(head.length + data.length);
    packet.set(head);
    packet.set(data, head.length);
    for (let at = 0; at < packet.length; ) {
      at += write(filmId, at === 0, at === 0 ? Math.max(0, decoded - 9000) : null, packet.subarray(at));
    }
  });
  return new Uint8Array(Buffer.concat(out));
}

function stamp(mark: number, time: number): number[] {
  const high = Math.floor(time / 2 ** 30) & 7;
  return [
    (mark << 4) | (high << 1) | 1,
    (time >> 22) & 0xff,
    ((time >> 14) & 0xfe) | 1,
    (time >> 7) & 0xff,
    ((time << 1) & 0xfe) | 1,
  ];
}

/** CRC-32 as MPEG uses it (annex A): not reflected, nothing turned over at the end. */
function checksum(bytes: Uint8Array): number {
  let sum = 0xffff_ffff;
  for (const byte of bytes) {
    sum ^= byte << 24;
    for (let n = 0; n < 8; n++) sum = (sum & 0x8000_0000) !== 0 ? (sum << 1) ^ 0x04c1_1db7 : sum << 1;
  }
  return sum >>> 0;
}
