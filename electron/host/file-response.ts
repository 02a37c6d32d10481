import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { parseRange } from './range';

/** A file as a response, whole or one range, streamed; 404 when it is not there, 416 when the range is outside. */
export async function fileResponse(file: string, type: string, range: string | undefined): Promise<Response> {
  const handle = await open(file, 'r').catch((error: NodeJS.ErrnoException) => {
    if (['ENOENT', 'ENOTDIR', 'EACCES', 'EISDIR'].includes(error.code ?? '')) return null;
    throw error;
  });
  if (!handle) return new Response('not there', { status: 404 });
  const facts = await handle.stat();
  if (!facts.isFile()) {
    await handle.close();
    return new Response('not a file', { status: 404 });
  }
  const wanted = parseRange(range, facts.size);
  const headers: Record<string, string> = { 'Content-Type': type, 'Accept-Ranges': 'bytes' };
  if (wanted === 'unsatisfiable') {
    await handle.close();
    return new Response(null, { status: 416, headers: { 'Content-Range': `bytes */${facts.size}` } });
  }
  const part = wanted ?? { start: 0, end: facts.size - 1 };
  headers['Content-Length'] = String(part.end - part.start + 1);
  if (wanted) headers['Content-Range'] = `bytes ${part.start}-${part.end}/${facts.size}`;
  if (facts.size === 0) {
    await handle.close();
    return new Response(null, { status: 200, headers });
  }
  // the stream closes the handle when it ends or is cancelled
  const stream = handle.createReadStream({ start: part.start, end: part.end, autoClose: true });
  return new Response(Readable.toWeb(stream) as ReadableStream<Uint8Array>, {
    status: wanted ? 206 : 200,
    headers,
  });
}
