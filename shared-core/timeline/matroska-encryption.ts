/** Elements on the way to a track's encryption (RFC 9559, 5.1.4.1.31), from the file's top level down. */
const way = [0x18538067, 0x1654ae6b, 0xae, 0x6d80, 0x6240] as const;
const contentEncryption = 0x5035;
/** Elements looked at before giving up: a damaged list may go on for ever. */
const elementsAtMost = 10_000;

/** Whether a track of a Matroska or WebM file is encrypted, as its first bytes tell. */
export function isMatroskaEncrypted(head: Uint8Array): boolean {
  let left = elementsAtMost;
  const search = (from: number, to: number, depth: number): boolean => {
    let at = from;
    while (at < to && left > 0) {
      left -= 1;
      const id = numberAt(head, at, false);
      const size = id && numberAt(head, at + id.length, true);
      if (!id || !size) return false;
      const start = at + id.length + size.length;
      const end = Math.min(to, start + size.value);
      if (depth === way.length && id.value === contentEncryption) return true;
      if (id.value === way[depth] && search(start, end, depth + 1)) return true;
      at = end;
    }
    return false;
  };
  return search(0, head.length, 0);
}

/** A number of variable length (RFC 8794, 4): a name keeps its marker bit, a size does not; one that isn't known goes on to the end. */
function numberAt(
  bytes: Uint8Array,
  at: number,
  isSize: boolean,
): { readonly value: number; readonly length: number } | null {
  const first = bytes[at] as number;
  const length = Math.clz32(first) - 23;
  if (first === 0 || at + length > bytes.length) return null;
  let value = isSize ? first - 2 ** (8 - length) : first;
  for (let n = 1; n < length; n++) value = value * 256 + (bytes[at + n] as number);
  const unknown = isSize && value === 2 ** (7 * length) - 1;
  return { value: unknown ? Number.POSITIVE_INFINITY : value, length };
}
