import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import { type OperationName, operations } from '#core/host-contract/operations';
import { ArrivedClips } from './arrived-clips';
import { type Disk, realDisk } from '../disk/atomic-file';
import { ArrivedBundles } from './bundle/arrived-bundles';
import { bundleHandlers } from './handlers/bundle-handlers';
import { clipHandlers } from './handlers/clip-handlers';
import { coachHandlers } from './handlers/coach-handlers';
import { copyHandlers } from './handlers/copy-handlers';
import { handoutHandlers } from './handlers/handout-handlers';
import type { HandlersOf, HostParts } from './handlers/handlers';
import { jobHandlers } from './handlers/job-handlers';
import { memoryHandlers } from './handlers/memory-handlers';
import { mediaHandlers } from './handlers/media-handlers';
import { libraryHandlers } from './handlers/library-handlers';
import { manySwimsHandlers } from './handlers/many-swims-handlers';
import { placeHandlers } from './handlers/place-handlers';
import { practiceHandlers } from './handlers/practice-handlers';
import { swimHandlers } from './handlers/swim-handlers';
import { trialHandlers } from './handlers/trial-handlers';
import { upkeepHandlers } from './handlers/upkeep-handlers';
import { videoHandlers } from './handlers/video-handlers';
import { windowHandlers } from './handlers/window-handlers';
import { Jobs } from './jobs';
import { libraryFolder, type LibraryFolder } from './library-folder';
import { libraryPresent, prepareLibrary } from './prepare-library';
import { Remembered } from './remembered';
import { SwimShelf } from './shelf/swim-shelf';
import type { Surroundings } from './surroundings';
import { defaultCopiesLimit, WorkingCopies } from './working-copies';

export interface HostOptions {
  readonly libraryPath: string;
  /** Folder of ready sample swims for a new library, or several that make one together; null for none. */
  readonly samplesPath: string | readonly string[] | null;
  readonly disk?: Disk;
  readonly makeId?: () => string;
  /** Most bytes that working copies may take together. */
  readonly copiesLimitBytes?: number;
  /** Where windows' memory is kept, apart from any library; without it, it lasts as long as the host. */
  readonly rememberedFile?: string;
  /** Program of the threads that read many swims at once; without it they are read in the host itself. */
  readonly readingThread?: URL;
  /** What the program around the host can do; nothing of it when not given. */
  readonly surroundings?: Partial<Surroundings>;
}

export interface Host {
  readonly folder: LibraryFolder;
  readonly shelf: SwimShelf;
  readonly clips: ArrivedClips;
  readonly copies: WorkingCopies;
  readonly bundles: ArrivedBundles;
  /** Runs an operation on unchecked input; input and output are checked against the contract here. */
  run(name: string, input: unknown): Promise<Result<unknown>>;
  /** Stops what is still at work and waits until it has cleaned up. */
  close(): Promise<void>;
}

/** The one host behind both transports. Prepares the library before it answers. */
export async function createHost(options: HostOptions): Promise<Result<Host>> {
  const folder = libraryFolder(path.resolve(options.libraryPath));
  const prepared = await prepareLibrary(folder, [options.samplesPath ?? []].flat());
  if (!prepared.ok) return prepared;
  const disk = options.disk ?? realDisk;
  const makeId = options.makeId ?? randomUUID;
  const shelf = new SwimShelf(folder, disk, options.readingThread ?? null);
  const jobs = new Jobs(makeId, options.surroundings?.onWork);
  const parts: HostParts = {
    folder,
    disk,
    shelf,
    bundles: new ArrivedBundles(folder, shelf, makeId),
    clips: new ArrivedClips(folder, makeId),
    jobs,
    copies: new WorkingCopies(folder, shelf, jobs, disk, options.copiesLimitBytes ?? defaultCopiesLimit),
    remembered: new Remembered(options.rememberedFile ?? null, disk),
    makeId,
    surroundings: options.surroundings ?? {},
  };
  const handlers: HandlersOf<typeof operations> = {
    ...libraryHandlers(parts),
    ...swimHandlers(parts),
    ...manySwimsHandlers(parts),
    ...copyHandlers(parts),
    ...clipHandlers(parts),
    ...coachHandlers(parts),
    ...mediaHandlers(parts),
    ...memoryHandlers(parts),
    ...bundleHandlers(parts),
    ...handoutHandlers(parts),
    ...jobHandlers(parts),
    ...placeHandlers(parts),
    ...practiceHandlers(parts),
    ...trialHandlers(parts),
    ...upkeepHandlers(parts),
    ...videoHandlers(parts),
    ...windowHandlers(parts),
  };

  return success({
    folder,
    shelf,
    clips: parts.clips,
    copies: parts.copies,
    bundles: parts.bundles,
    async run(name, input) {
      if (!Object.hasOwn(operations, name)) return failure('bad-request', { name });
      const operation = operations[name as OperationName];
      const checked = operation.input.safeParse(input);
      if (!checked.success) {
        const issue = checked.error.issues[0];
        return failure('bad-request', {
          name,
          where: issue?.path.map(String).join('.') ?? '',
          what: issue?.message ?? '',
        });
      }
      const present = await libraryPresent(folder);
      if (!present.ok) return present;
      const handler = handlers[name as OperationName] as (input: unknown) => Promise<Result<unknown>>;
      const result = await handler(checked.data);
      return result.ok ? success(operation.output.parse(result.value)) : result;
    },
    async close() {
      await parts.jobs.close();
      await parts.shelf.close();
    },
  });
}
