import { createHash } from 'node:crypto';
import { open } from 'node:fs/promises';
import type { Clip } from '#core/swim-file/swim-schema';

const edge = 64 * 1024;

/** Size and SHA-256 of the first and last 64 KiB of a file: cheap on any size, and differs for any other film. */
export async function fingerprintOf(file: string): Promise<Clip['fingerprint']> {
  const handle = await open(file, 'r');
  try {
    const { size } = await handle.stat();
    const hash = createHash('sha256');
    const length = Math.min(edge, size);
    for (const position of [0, Math.max(0, size - edge)]) {
      const { buffer, bytesRead } = await handle.read(Buffer.alloc(length), 0, length, position);
      hash.update(buffer.subarray(0, bytesRead));
    }
    return { bytes: size, edgesSha256: hash.digest('hex') };
  } finally {
    await handle.close();
  }
}

export function sameFingerprint(a: Clip['fingerprint'], b: Clip['fingerprint']): boolean {
  return a.bytes === b.bytes && a.edgesSha256 === b.edgesSha256;
}
