import { execa } from 'execa';
import { createFieldPairing, type PacketPart } from '#core/timeline/avc-fields';
import { filmStream } from './film-stream';
import { findMediaTool } from './find-media-tool';

/**
 * What each packet of an H.264 track is to its frames: many camcorders write each field in a packet of its own. `sizes` are
 * the packets' lengths as ffprobe lists them. Reads the track once, decodes nothing. Null where the bytes that come are not
 * those that were listed.
 */
export async function pairFields(
  file: string,
  track: number,
  sizes: readonly number[],
  record: Uint8Array | null,
  signal?: AbortSignal,
): Promise<readonly PacketPart[] | null> {
  const tool = await findMediaTool('ffmpeg');
  if (!tool) return null;
  const pairing = createFieldPairing(record);
  const reading = execa(
    tool.path,
    [
      ...[
        '-hide_banner',
        '-v',
        'quiet',
        '-nostdin',
        '-protocol_whitelist',
        'file,pipe',
        '-i',
        `file:${file}`,
      ],
      ...['-map', `0:${filmStream(track)}`, '-c', 'copy', '-copyinkf', '-copyts', '-f', 'data', 'pipe:1'],
    ],
    {
      ...{ shell: false, stdin: 'ignore', stdout: 'pipe', stderr: 'ignore', encoding: 'buffer' },
      ...{ buffer: false, reject: false, forceKillAfterDelay: 2000 },
      ...(signal ? { cancelSignal: signal } : {}),
    } as const,
  );
  let parts: Uint8Array[] = [];
  let filled = 0;
  let place = 0;
  let whole = true;
  for await (const came of reading.stdout as AsyncIterable<Uint8Array>) {
    let chunk = came;
    while (chunk.length > 0) {
      const size = sizes[place];
      if (size === undefined) {
        whole = false;
        break;
      }
      const part = chunk.subarray(0, size - filled);
      parts.push(part);
      filled += part.length;
      chunk = chunk.subarray(part.length);
      if (filled < size) continue;
      pairing.see(parts.length === 1 ? part : Buffer.concat(parts));
      parts = [];
      filled = 0;
      place += 1;
    }
  }
  await reading;
  return whole && place === sizes.length && filled === 0 ? pairing.end() : null;
}
