/** Names Windows keeps for devices, whatever their ending. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A file name that Windows, macOS and Linux all take: no separators, no signs with a meaning, no control letters,
 * no dot or space at the ends, never a device's name, at most 120 letters before the ending.
 */
export function safeFileName(parts: readonly string[], ending: string): string {
  const plain = parts
    .map((part) =>
      [...part.normalize('NFC')]
        .filter((letter) => letter >= ' ' && letter !== '\u007f')
        .join('')
        .replace(/[<>:"/\\|?*]/g, ' ')
        .replace(/\s+/g, ' ')
        .trim(),
    )
    .filter(Boolean)
    .join(' - ');
  const cut = [...plain]
    .slice(0, 120)
    .join('')
    .replace(/^[. ]+|[. ]+$/g, '');
  const name = cut === '' || reserved.test(cut) ? `still ${cut}`.trim() : cut;
  return `${name}.${ending}`;
}
