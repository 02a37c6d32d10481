/**
 * Names a media container by its first bytes, or null when they are no container known here. Signatures: ISO/IEC
 * 14496-12 (`ftyp` and other top boxes), Matroska/WebM (EBML magic 1A45DFA3), RIFF AVI, ISO/IEC 13818-1 (0x47 every
 * 188 bytes, 192 with a leading time code; pack start code 000001BA), ASF (header object GUID), FLV, MXF (SMPTE 377
 * partition pack key), Ogg; DV's DIF header 1F0700 (from memory).
 */
export function nameContainer(head: Uint8Array): string | null {
  const text = (from: number, to: number): string => String.fromCharCode(...head.subarray(from, to));
  const starts = (...bytes: number[]): boolean => bytes.every((byte, i) => head[i] === byte);
  if (isoBoxes.has(text(4, 8))) return 'MP4';
  if (starts(0x1a, 0x45, 0xdf, 0xa3)) return 'Matroska';
  if (text(0, 4) === 'RIFF' && text(8, 11) === 'AVI') return 'AVI';
  if (head[0] === 0x47 && head[188] === 0x47 && head[376] === 0x47) return 'MPEG-TS';
  if (head[4] === 0x47 && head[196] === 0x47 && head[388] === 0x47) return 'MPEG-TS';
  if (starts(0, 0, 1, 0xba)) return 'MPEG-PS';
  if (starts(0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11)) return 'ASF';
  if (text(0, 3) === 'FLV') return 'FLV';
  if (starts(0x06, 0x0e, 0x2b, 0x34, 0x02, 0x05, 0x01, 0x01)) return 'MXF';
  if (text(0, 4) === 'OggS') return 'Ogg';
  if (starts(0x1f, 0x07, 0x00)) return 'DV';
  return holdsTransportPackets(head) ? 'MPEG-TS' : null;
}

/**
 * Whether a transport stream's sync byte comes back again and again at the length of a packet (188 bytes, 192 with a time
 * code, 204 with parity), wherever the first whole packet begins: a card may break a file anywhere.
 */
function holdsTransportPackets(head: Uint8Array): boolean {
  return [188, 192, 204].some((length) =>
    head
      .subarray(0, length)
      .some((byte, first) => byte === 0x47 && [1, 2, 3, 4].every((n) => head[first + n * length] === 0x47)),
  );
}

/** Whether a container is film, but of a kind that needs a working copy before a window can read it. */
export const isUnreadableContainer = (name: string): boolean =>
  ['AVI', 'MPEG-PS', 'ASF', 'FLV', 'MXF', 'DV'].includes(name);

/** Whether a container's demuxer lists only the streams it can read: one it passes over may well be the film. */
export const listsOnlyReadable = (name: string): boolean => ['MPEG-TS', 'Ogg'].includes(name);

const isoBoxes = new Set(['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip', 'styp', 'moof', 'pnot']);
