/** The bytes of a buffer, whatever view or buffer it is; null when there is none. */
export function bytesOf(source: AllowSharedBufferSource | undefined): Uint8Array | null {
  if (source === undefined) return null;
  return ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);
}
