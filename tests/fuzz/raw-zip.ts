import { crc32, deflateRawSync } from 'node:zlib';

/** One file of a zip, with what its headers claim; nothing is checked, so that hostile ones can be made. */
export interface RawEntry {
  readonly name: string | Uint8Array;
  readonly bytes: Uint8Array;
  readonly deflate?: boolean;
  readonly claims?: {
    readonly size?: number;
    readonly packed?: number;
    readonly crc?: number;
    readonly method?: number;
    readonly flags?: number;
    /** Upper half: the Unix mode. */
    readonly attributes?: number;
    readonly extra?: Uint8Array;
  };
}

/** A zip of exactly these entries, names and claims as given. Layout: PKWARE APPNOTE 6.3, sections 4.3.7 to 4.3.16. */
export function rawZip(entries: readonly RawEntry[], claimedCount = entries.length): Buffer {
  const locals: Buffer[] = [];
  const centrals: Buffer[] = [];
  let offset = 0;
  for (const { name, bytes, deflate = false, claims = {} } of entries) {
    const named = Buffer.from(name);
    const packed = deflate ? deflateRawSync(bytes) : Buffer.from(bytes);
    const extra = Buffer.from(claims.extra ?? []);
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(20, 0);
    facts.writeUInt16LE(claims.flags ?? 0x0800, 2);
    facts.writeUInt16LE(claims.method ?? (deflate ? 8 : 0), 4);
    facts.writeUInt32LE((claims.crc ?? crc32(bytes)) >>> 0, 10);
    facts.writeUInt32LE((claims.packed ?? packed.length) >>> 0, 14);
    facts.writeUInt32LE((claims.size ?? bytes.length) >>> 0, 18);
    facts.writeUInt16LE(named.length, 22);
    facts.writeUInt16LE(extra.length, 24);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), facts, named, extra, packed]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE((claims.attributes ?? 0) >>> 0, 6);
    tail.writeUInt32LE(offset, 10);
    centrals.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x03', 'latin1'), facts, tail, named, extra]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(centrals);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(claimedCount & 0xffff, 8);
  end.writeUInt16LE(claimedCount & 0xffff, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...locals, directory, end]);
}
