import { randomUUID } from 'node:crypto';
import { mkdir, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import {
  type CoachFile,
  coachSchema,
  type OperationInput,
  type OperationName,
  type OperationOutput,
  operations,
} from '#core/host-contract/operations';
import { type FileFormat, parseFile } from '#core/swim-file/parse-file';
import { emptySquad, parseSquad } from '#core/swim-file/squad-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { describeMediaTools } from '../media/find-media-tool';
import { ArrivedClips } from './arrived-clips';
import { type Disk, realDisk } from './atomic-file';
import { fingerprintOf, sameFingerprint } from './fingerprint';
import { fileFailure } from './file-errors';
import { KeptFile } from './kept-file';
import { libraryFolder, type LibraryFolder } from './library-folder';
import { libraryPresent, prepareLibrary } from './prepare-library';
import { SwimShelf } from './swim-shelf';

export interface HostOptions {
  readonly libraryPath: string;
  /** Folder of ready sample swims for a new library; null for none. */
  readonly samplesPath: string | null;
  readonly disk?: Disk;
  readonly makeId?: () => string;
}

type Handlers = {
  readonly [Name in OperationName]: (input: OperationInput<Name>) => Promise<Result<OperationOutput<Name>>>;
};

export interface Host {
  readonly folder: LibraryFolder;
  readonly shelf: SwimShelf;
  readonly clips: ArrivedClips;
  /** Runs an operation on unchecked input; input and output are checked against the contract here. */
  run(name: string, input: unknown): Promise<Result<unknown>>;
}

const coachFormat: FileFormat<CoachFile> = {
  format: 'submark-coach',
  version: 1,
  schema: coachSchema,
  migrations: {},
};
const emptyCoach: CoachFile = { format: 'submark-coach', version: 1, remarkings: [] };
const pretty = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The one host behind both transports. Prepares the library before it answers. */
export async function createHost(options: HostOptions): Promise<Result<Host>> {
  const folder = libraryFolder(path.resolve(options.libraryPath));
  const prepared = await prepareLibrary(folder, options.samplesPath);
  if (!prepared.ok) return prepared;
  const disk = options.disk ?? realDisk;
  const makeId = options.makeId ?? randomUUID;
  const shelf = new SwimShelf(folder, disk);
  const clips = new ArrivedClips(folder, makeId);
  const squadCodes = { damaged: 'squad-damaged', newer: 'squad-newer-version' } as const;
  const squadFile = new KeptFile(disk, parseSquad, squadCodes);
  const coachFile = new KeptFile(disk, (text) => parseFile(coachFormat, text), squadCodes);

  /** A file that need not exist: its empty value and no revision when it doesn't. */
  const readOr = async <T>(
    file: KeptFile<T>,
    at: string,
    empty: T,
  ): Promise<Result<{ value: T; revision: string | null }>> => {
    const read = await file.read(at);
    if (read.ok || read.error.code !== 'not-found') return read;
    return success({ value: empty, revision: null });
  };

  const create = async (swim: Swim, clipId: string): Promise<Result<{ swim: Swim; revision: string }>> => {
    const into = shelf.folderOf(swim.id);
    try {
      await mkdir(into);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST')
        return failure('already-there', { name: swim.id });
      return fileFailure(error, swim.id, 'writing');
    }
    const settled = await clips.settle(clipId, into);
    const made = settled.ok ? { ...swim, clip: { ...swim.clip, ...settled.value.clip } } : swim;
    const written = settled.ok ? await shelf.write(made, null) : settled;
    if (!written.ok) {
      // the clip waits for another try; only then may the folder go
      if (settled.ok) await settled.value.giveBack();
      await rm(into, { recursive: true, force: true });
      return written;
    }
    return success({ swim: made, revision: written.value.revision });
  };

  const relink = async (id: string, file: string): Promise<Result<OperationOutput<'swim/relink'>>> => {
    const read = await shelf.read(id);
    if (!read.ok) return read;
    const { swim, revision } = read.value;
    const name = path.basename(file);
    if (!path.isAbsolute(file) || file.includes('\0')) return failure('not-allowed', { name });
    try {
      if (!(await stat(file)).isFile()) return failure('not-a-video', { name });
      if (!sameFingerprint(await fingerprintOf(file), swim.clip.fingerprint))
        return failure('clip-changed', { name });
    } catch (error) {
      return fileFailure(error, name, 'reading');
    }
    const moved: Swim = { ...swim, clip: { ...swim.clip, place: { kind: 'outside', path: file } } };
    const written = await shelf.write(moved, revision);
    return written.ok ? success({ swim: moved, revision: written.value.revision }) : written;
  };

  const handlers: Handlers = {
    'library/open': async () => {
      const listed = await shelf.list();
      if (!listed.ok) return listed;
      const squad = await readOr(squadFile, folder.squad, emptySquad);
      if (!squad.ok) return squad;
      return success({
        path: folder.root,
        ...listed.value,
        squad: squad.value.value,
        squadRevision: squad.value.revision,
      });
    },
    'swim/read': ({ id }) => shelf.read(id),
    'swim/write': ({ swim, baseRevision }) => shelf.write(swim, baseRevision),
    'swim/create': ({ swim, clipId }) => create(swim, clipId),
    'swim/remove': ({ id }) => shelf.remove(id),
    'swim/restore': ({ id }) => shelf.restore(id),
    'swim/relink': ({ id, path: file }) => relink(id, file),
    'clip/refer': ({ path: file }) => clips.refer(file),
    'clip/discard': ({ clipId }) => clips.discard(clipId),
    'squad/write': ({ squad, baseRevision }) => squadFile.write(folder.squad, pretty(squad), baseRevision),
    'coach/read': async () => {
      const read = await readOr(coachFile, folder.coach, emptyCoach);
      return read.ok ? success({ coach: read.value.value, revision: read.value.revision }) : read;
    },
    'coach/write': ({ coach, baseRevision }) => coachFile.write(folder.coach, pretty(coach), baseRevision),
    'media/tools': async () => success(await describeMediaTools()),
  };

  return success({
    folder,
    shelf,
    clips,
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
  });
}
