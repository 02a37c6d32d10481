import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { parseRange } from '#electron/host/range';

/** Serves the harness page and the clips given by name, with byte ranges, on the loopback address. */
export interface HarnessServer {
  readonly address: string;
  /** An address under which a file can be fetched. */
  clip(path: string): string;
  /** Bytes of clips sent so far. */
  sent(): number;
  close(): Promise<void>;
}

async function bundled(entry: string): Promise<string> {
  const bundle = await build({
    entryPoints: [fileURLToPath(new URL(entry, import.meta.url))],
    bundle: true,
    format: 'esm',
    target: 'es2022',
    write: false,
    tsconfig: fileURLToPath(new URL('../../tsconfig.json', import.meta.url)),
    logLevel: 'silent',
  });
  return bundle.outputFiles[0]?.text ?? '';
}

export async function serveHarness(): Promise<HarnessServer> {
  const [script, filmWorker, decoderWorker] = await Promise.all([
    bundled('page.ts'),
    bundled('../../../renderer/video/film-worker.ts'),
    bundled('../../../renderer/video/decoder-worker.ts'),
  ]);
  const clips: string[] = [];
  let sent = 0;
  const server = createServer((request, answer) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    const wanted = /^\/clip\/(\d+)/.exec(path)?.[1];
    const javascript = {
      '/page.js': script,
      '/film-worker.ts': filmWorker,
      '/decoder-worker.ts': decoderWorker,
    }[path];
    if (javascript !== undefined)
      answer.writeHead(200, { 'content-type': 'text/javascript' }).end(javascript);
    else if (wanted !== undefined) {
      void sendFile(clips[Number(wanted)] ?? '', request, answer, (bytes) => {
        sent += bytes;
      });
    } else if (path === '/') answer.writeHead(200, { 'content-type': 'text/html' }).end(page);
    else answer.writeHead(404).end();
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    clip(path) {
      const known = clips.indexOf(path);
      return `/clip/${known >= 0 ? known : clips.push(path) - 1}`;
    },
    sent: () => sent,
    close: () => closeServer(server),
  };
}

const page = '<!doctype html><title>Clips</title><body><script type="module" src="/page.js"></script></body>';

async function sendFile(
  path: string,
  request: IncomingMessage,
  answer: ServerResponse,
  onSent: (bytes: number) => void,
): Promise<void> {
  const size = await stat(path).then(
    (found) => found.size,
    () => null,
  );
  if (size === null) {
    answer.writeHead(404).end();
    return;
  }
  const range = parseRange(request.headers.range, size);
  if (range === 'unsatisfiable' || size === 0) {
    answer.writeHead(416, { 'content-range': `bytes */${size}` }).end();
    return;
  }
  const { start: from, end: to } = range ?? { start: 0, end: size - 1 };
  answer.writeHead(range ? 206 : 200, {
    'content-type': 'application/octet-stream',
    'accept-ranges': 'bytes',
    'content-length': to - from + 1,
    ...(range ? { 'content-range': `bytes ${from}-${to}/${size}` } : {}),
  });
  const stream = createReadStream(path, { start: from, end: to });
  stream.on('error', () => answer.destroy());
  answer.on('close', () => {
    onSent(stream.bytesRead);
    stream.destroy();
  });
  stream.pipe(answer);
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
