import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import type { ClipToAdd } from './clip-to-add';

/** As the host takes it: size, and SHA-256 of the first and the last 64 KiB. */
const edge = 64 * 1024;

async function fingerprintOf(file: Blob): Promise<SwimSummary['clip']['fingerprint']> {
  const edges = new Blob([file.slice(0, edge), file.slice(Math.max(0, file.size - edge))]);
  const hash = await crypto.subtle.digest('SHA-256', await edges.arrayBuffer());
  const edgesSha256 = [...new Uint8Array(hash)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { bytes: file.size, edgesSha256 };
}

/** Swims of the shelf that were made of this very clip, whatever it is called now. */
export async function twinsOfClip(
  adding: ClipToAdd,
  swims: readonly SwimSummary[],
): Promise<readonly SwimSummary[]> {
  const size = adding.kind === 'file' ? adding.file.size : adding.clip.fingerprint.bytes;
  const alike = swims.filter(({ clip }) => clip.fingerprint.bytes === size);
  if (alike.length === 0) return [];
  const { edgesSha256 } = adding.kind === 'file' ? await fingerprintOf(adding.file) : adding.clip.fingerprint;
  return alike.filter(({ clip }) => clip.fingerprint.edgesSha256 === edgesSha256);
}
