import path from 'node:path';
import { fileURLToPath } from 'node:url';
import envPaths from 'env-paths';
import { errorWords } from '#core/host-contract/error-words';
import { createHost } from '../host/create-host';
import { createRequestHandler } from '../host/request-handler';
import { type LoopbackServer, serveLoopback } from './serve-loopback';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Where a library lies when nobody says otherwise. */
export function defaultLibraryPath(): string {
  return process.env['SUBMARK_LIBRARY'] ?? path.join(envPaths('Submark', { suffix: '' }).data, 'library');
}

/** Starts the host on a library and serves the built app over it. Throws with words for the coach when it can't. */
export async function startLoopbackApp(options: {
  readonly libraryPath: string;
  readonly port: number;
}): Promise<LoopbackServer> {
  const host = await createHost({
    libraryPath: options.libraryPath,
    samplesPath: path.join(root, 'sample-clips', 'library'),
  });
  if (!host.ok) {
    const words = errorWords(host.error);
    throw new Error(`${words.what} ${words.todo}`);
  }
  return serveLoopback(createRequestHandler(host.value, path.join(root, '.build', 'renderer')), options.port);
}
