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

/**
 * Whether a file's first bytes are those of a photo: HEIF and AVIF by their brand (ISO/IEC 23008-12; a film in the same
 * container has a `moov` box, which is for the caller to see), JPEG, PNG, GIF and WebP by their signatures.
 */
export function isPhoto(head: Uint8Array): boolean {
  const text = (from: number, to: number): string => String.fromCharCode(...head.subarray(from, to));
  if (text(4, 8) === 'ftyp') return photoBrands.has(text(8, 12));
  const isJpeg = head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff;
  return (
    isJpeg ||
    text(1, 4) === 'PNG' ||
    text(0, 4) === 'GIF8' ||
    (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP')
  );
}

const photoBrands = new Set([
  'heic',
  'heix',
  'heim',
  'heis',
  'hevc',
  'hevx',
  'mif1',
  'msf1',
  'avif',
  'avis',
  'MiHB',
  'MiHE',
]);

/** Whether a container is film, but of a kind that needs a working copy before a window can read it. */
export const isUnreadableContainer = (name: string): boolean =>
  ['AVI', 'MPEG-PS', 'ASF', 'FLV', 'MXF', 'DV'].includes(name);

/** Whether a container's demuxer lists only the streams it can read: one it passes over may well be the film. */
export const listsOnlyReadable = (name: string): boolean => ['MPEG-TS', 'Ogg'].includes(name);

const isoBoxes = new Set(['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip', 'styp', 'moof', 'pnot']);

/**
 * Whether a Matroska or WebM file ends before its one segment does, by its first bytes and its length: a reader that takes
 * only whole clusters loses what is in the last one. False where the segment does not say how long it is (RFC 8794, 6).
 */
export function isMatroskaCut(head: Uint8Array, bytes: number): boolean {
  let at = 0;
  for (let n = 0; n < 2; n++) {
    const isSegment = [0x18, 0x53, 0x80, 0x67].every((byte, i) => head[at + i] === byte);
    const first = head[at + 4] ?? 0;
    const length = Math.clz32(first) - 23;
    if (first === 0 || at + 4 + length > head.length) return false;
    let size = first - 2 ** (8 - length);
    let unknown = size === 2 ** (8 - length) - 1;
    for (let i = 1; i < length; i++) {
      const byte = head[at + 4 + i] as number;
      size = size * 256 + byte;
      unknown &&= byte === 0xff;
    }
    const end = at + 4 + length + size;
    if (isSegment) return !unknown && end > bytes;
    at = end;
  }
  return false;
}
