import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import envPaths from 'env-paths';
import { type Result, success } from '#core/host-contract/host-error';
import { createHost, type Host } from './create-host';
import { createRequestHandler } from './request-handler';

/** The project's folder, two above the bundles in .build/electron. */
export const appRoot = fileURLToPath(new URL('../..', import.meta.url));

/** Where a library lies when nobody says otherwise. */
export function defaultLibraryPath(): string {
  return process.env['SUBMARK_LIBRARY'] ?? path.join(envPaths('Submark', { suffix: '' }).data, 'library');
}

/** The samples of a new library: a whole month of an invented squad; `few`: its first seven swims; `none`. */
function sampleFolders(asked: string | undefined): string[] {
  const folders = asked === 'none' ? [] : asked === 'few' ? ['library'] : ['library', 'month'];
  return folders.map((name) => path.join(appRoot, 'sample-clips', name));
}

export interface AppHost {
  readonly host: Host;
  /** Answers everything of the app's own origin, whichever transport carries it. */
  readonly handler: (request: Request) => Promise<Response>;
}

/** The host on a library, new ones seeded with the sample swims, and the handler that serves it with the built app. */
export async function openAppHost(libraryPath: string): Promise<Result<AppHost>> {
  const host = await createHost({
    libraryPath,
    samplesPath: sampleFolders(process.env['SUBMARK_SAMPLES']),
    readingThread: pathToFileURL(path.join(appRoot, '.build', 'electron', 'reading-thread.js')),
  });
  if (!host.ok) return host;
  void host.value.shelf.warm();
  const handler = createRequestHandler(host.value, path.join(appRoot, '.build', 'renderer'));
  return success({ host: host.value, handler });
}
