import type { z } from 'zod';
import type { Result } from '#core/host-contract/host-error';
import type { ArrivedClips } from '../arrived-clips';
import type { ArrivedBundles } from '../bundle/arrived-bundles';
import type { Disk } from '../../disk/atomic-file';
import type { Jobs } from '../jobs';
import type { LibraryFolder } from '../library-folder';
import type { Remembered } from '../remembered';
import type { SwimShelf } from '../shelf/swim-shelf';
import type { Surroundings } from '../surroundings';
import type { WorkingCopies } from '../working-copies';

/** What the handlers of every area share. */
export interface HostParts {
  readonly folder: LibraryFolder;
  readonly disk: Disk;
  readonly shelf: SwimShelf;
  readonly clips: ArrivedClips;
  readonly bundles: ArrivedBundles;
  readonly jobs: Jobs;
  readonly copies: WorkingCopies;
  readonly remembered: Remembered;
  readonly makeId: () => string;
  readonly surroundings: Partial<Surroundings>;
}

type Operation = { readonly input: z.ZodType; readonly output: z.ZodType };

/** One handler for each operation of an area; its input has been checked, its output will be. */
export type HandlersOf<Operations extends Readonly<Record<string, Operation>>> = {
  readonly [Name in keyof Operations]: (
    input: z.infer<Operations[Name]['input']>,
  ) => Promise<Result<z.infer<Operations[Name]['output']>>>;
};
