import { createHash } from 'node:crypto';
import { open, stat } from 'node:fs/promises';
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

/**
 * Fingerprints of files that have not changed since they were last asked for, told by device, inode, size and both
 * change times: a film is asked for in hundreds of ranges, and its edges need not be read for each.
 */
export class KnownFingerprints {
  private readonly known = new Map<
    string,
    { readonly stamp: string; readonly fingerprint: Clip['fingerprint'] }
  >();

  async of(file: string): Promise<Clip['fingerprint']> {
    const { dev, ino, size, mtimeNs, ctimeNs } = await stat(file, { bigint: true });
    const stamp = [dev, ino, size, mtimeNs, ctimeNs].join(':');
    const known = this.known.get(file);
    if (known?.stamp === stamp) return known.fingerprint;
    const fingerprint = await fingerprintOf(file);
    this.known.set(file, { stamp, fingerprint });
    return fingerprint;
  }
}
