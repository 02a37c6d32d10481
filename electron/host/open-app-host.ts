import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationOutput } from '#core/host-contract/operations';
import { chooseLibrary, type WantedLibrary } from './chosen-library';
import { createHost, type Host } from './create-host';
import { exists, taken } from '../disk/exists';
import { fileFailure } from '../disk/file-errors';
import { libraryFolder } from './library-folder';
import { besideArchive } from '../media/find-media-tool';
import { createRequestHandler } from './request-handler';
import type { Surroundings } from './surroundings';
import { hostJobsWords } from '#core/words/host-jobs';

/** The project's folder, two above the bundles in .build/electron. */
export const appRoot = fileURLToPath(new URL('../..', import.meta.url));

/** The samples of a new library: a whole month of an invented squad; `few`: its first seven swims; `none`. */
function sampleFolders(asked: string | undefined): string[] {
  const folders = asked === 'none' ? [] : asked === 'few' ? ['library'] : ['library', 'month'];
  // a packed app's own archive can be read file by file, not copied as folders: the samples lie beside it
  return folders.map((name) => besideArchive(path.join(appRoot, 'sample-clips', name)));
}

export interface AppHost {
  /** The host on the library that is open now; it stays this object when another library is gone over to. */
  readonly host: Host;
  /** Answers everything of the app's own origin, whichever transport carries it. */
  readonly handler: (request: Request) => Promise<Response>;
}

interface Around extends Partial<Omit<Surroundings, 'openLibrary'>> {
  /** Remembers a library for the next start. */
  readonly remember?: (library: string) => Promise<void>;
}

/** What lies in a folder: a library, nothing (or no folder yet), or something else. */
async function lookInto(folder: string): Promise<'library' | 'nothing' | 'other'> {
  if (await exists(libraryFolder(folder).about)) return 'library';
  return (await taken(folder)) ? 'other' : 'nothing';
}

/**
 * The host on a library, new ones seeded with the sample swims, and the handler that serves it with the built app. A
 * library that was chosen before and is not there now is `library-gone`: it is never made anew where its disk would be.
 */
export async function openAppHost(wanted: WantedLibrary, around: Around = {}): Promise<Result<AppHost>> {
  const { remember = chooseLibrary, ...surroundings } = around;

  const openOn = async (libraryPath: string, samplesPath: readonly string[]): Promise<Result<Host>> => {
    const made = await createHost({
      libraryPath,
      samplesPath,
      rememberedFile: path.join(wanted.windowFolder, 'remembered.json'),
      readingThread: pathToFileURL(path.join(appRoot, '.build', 'electron', 'reading-thread.js')),
      surroundings: { ...surroundings, openLibrary },
    });
    if (made.ok) void made.value.shelf.warm();
    return made;
  };

  const openLibrary = async (asked: string): Promise<Result<OperationOutput<'library/switch'>>> => {
    if (!path.isAbsolute(asked) || asked.includes('\0')) return failure('not-allowed', { name: asked });
    const library = path.resolve(asked);
    let found: 'library' | 'nothing' | 'other';
    try {
      found = await lookInto(library);
    } catch (error) {
      return fileFailure(error, path.basename(library), 'reading');
    }
    if (found === 'other') return failure('not-a-library', { name: library });
    if (library !== current.folder.root) {
      const next = await openOn(library, []);
      if (!next.ok) return next;
      const before = current;
      current = next.value;
      await before.close();
    }
    const remembered = wanted.why !== 'named';
    if (remembered)
      try {
        await remember(library);
      } catch (error) {
        return fileFailure(error, hostJobsWords('choiceLibrary'), 'writing');
      }
    return success({ path: library, made: found === 'nothing', remembered });
  };

  if (wanted.why === 'chosen')
    try {
      if ((await lookInto(wanted.path)) !== 'library') return failure('library-gone', { name: wanted.path });
    } catch (error) {
      return fileFailure(error, wanted.path, 'reading');
    }
  const first = await openOn(wanted.path, sampleFolders(process.env['SUBMARK_SAMPLES']));
  if (!first.ok) return first;
  let current = first.value;
  const host: Host = {
    get folder() {
      return current.folder;
    },
    get shelf() {
      return current.shelf;
    },
    get clips() {
      return current.clips;
    },
    get copies() {
      return current.copies;
    },
    get bundles() {
      return current.bundles;
    },
    run: (name, input) => current.run(name, input),
    close: () => current.close(),
  };
  return success({ host, handler: createRequestHandler(host, path.join(appRoot, '.build', 'renderer')) });
}
