import { z } from 'zod';
import { cardSchema, idSchema } from '../../swim-file/swim-schema';
import { hostErrorSchema } from '../host-error';
import { startedJobSchema } from './job-operations';

const filePath = z.string().min(1).max(4096);
const amountSchema = z.strictObject({ files: z.number().int(), bytes: z.number() });

/** What takes room in a library, by what it is. */
export const storageKinds = [
  'clips',
  'marks',
  'thumbnails',
  'generations',
  'copies',
  'plans',
  'exports',
  'bin',
  'cache',
  'other',
] as const;
export type StorageKind = (typeof storageKinds)[number];

export const storageSchema = z.strictObject({
  kinds: z.record(z.enum(storageKinds), amountSchema),
  /** Swims whose clip lies elsewhere: no room is taken here for those. */
  clipsOutside: z.number().int(),
});
export type Storage = z.infer<typeof storageSchema>;

const binSchema = z.strictObject({
  swims: z.array(
    z.strictObject({ id: idSchema, card: cardSchema.nullable(), marks: z.number().int(), bytes: z.number() }),
  ),
  /** Removed practices and trials, with their titles where they can be read. */
  plans: z.array(
    z.strictObject({
      kind: z.enum(['practice', 'trial']),
      id: idSchema,
      title: z.string(),
      bytes: z.number(),
    }),
  ),
});
export type BinContent = z.infer<typeof binSchema>;

/** Result of the job that looks for missing clips. */
export const clipsFoundSchema = z.strictObject({
  found: z.array(z.strictObject({ id: idSchema, path: z.string() })),
  stillMissing: z.number().int(),
  looked: z.number().int(),
  /** Folders that could not be looked into. */
  closedFolders: z.number().int(),
  failed: z.array(z.strictObject({ id: idSchema, error: hostErrorSchema })),
});

/** Result of the job that backs a library up: written, and read back to the last byte. */
export const backedUpSchema = z.strictObject({
  path: z.string(),
  files: z.number().int(),
  bytes: z.number(),
  /** Clips that were left outside the library, and so are not in the archive. */
  outside: z.array(z.string()),
});

/** Result of the job that makes a library out of an archive. */
export const restoredSchema = z.strictObject({
  path: z.string(),
  files: z.number().int(),
  bytes: z.number(),
  swims: z.number().int(),
});

const erasedKinds = [
  'swim',
  'bin',
  'export',
  'generation',
  'copy',
  'cache',
  'squad',
  'practice',
  'trial',
  'coach',
  'mention',
] as const;

/** Everything that erasing a swimmer removes or changes, file by file, before anything is touched. */
export const erasePlanSchema = z.strictObject({
  swimmerId: idSchema,
  name: z.string(),
  /** Proves that what is erased is what was shown. */
  token: z.string(),
  files: z.array(
    z.strictObject({
      path: z.string(),
      kind: z.enum(erasedKinds),
      does: z.enum(['remove', 'change']),
      /** What is taken out of a file that is changed, in words; empty for one removed. */
      words: z.string(),
      bytes: z.number(),
    }),
  ),
  swims: z.number().int(),
  /** Clips of this swimmer that lie outside the library: told, never touched. */
  outside: z.array(z.string()),
  /** Exports that don't say whom they show; only the coach can tell. */
  exportsUntold: z.array(z.string()),
});
export type ErasePlan = z.infer<typeof erasePlanSchema>;

/** What was done, and what a look through the whole library afterwards still finds: nothing, or named. */
export const erasedSchema = z.strictObject({
  removed: z.number().int(),
  changed: z.number().int(),
  bytes: z.number(),
  swimIds: z.array(idSchema),
  filesLooked: z.number().int(),
  left: z.array(z.strictObject({ path: z.string(), what: z.enum(['name', 'id', 'swim', 'clip']) })),
  outside: z.array(z.string()),
  exportsUntold: z.array(z.string()),
});
export type Erased = z.infer<typeof erasedSchema>;

const nothing = z.strictObject({});

export const upkeepOperations = {
  /** Starts a job that adds up what takes room; its result is `storageSchema`. */
  'storage/look': { input: nothing, output: startedJobSchema },
  /** Removes exported files, or what can be made again. */
  'storage/clean': {
    input: z.strictObject({ what: z.enum(['exports', 'cache', 'generations', 'thumbnails']) }),
    output: amountSchema,
  },
  'bin/list': { input: nothing, output: binSchema },
  /** Removes from the bin for good. */
  'bin/empty': {
    input: z.strictObject({
      swims: z.array(idSchema).max(100_000),
      practices: z.array(idSchema).max(100_000),
      trials: z.array(idSchema).max(100_000),
    }),
    output: amountSchema,
  },
  /** Starts a job that looks in a folder for missing clips by fingerprint and points their swims there. */
  'clips/find': { input: z.strictObject({ folder: filePath }), output: startedJobSchema },
  /** Starts a job that writes the whole library into one archive, never over another file, and checks it. */
  'library/back-up': { input: z.strictObject({ file: filePath }), output: startedJobSchema },
  /** Starts a job that makes a new library folder out of an archive, never over an existing one. */
  'library/restore': {
    input: z.strictObject({ archive: filePath, folder: filePath }),
    output: startedJobSchema,
  },
  /** Starts a job that lists what erasing a swimmer would do; its result is `erasePlanSchema`. Touches nothing. */
  'erase/plan': { input: z.strictObject({ swimmerId: idSchema }), output: startedJobSchema },
  /** Starts the erasing; `conflict` when the library no longer is as the plan of this token said. */
  'erase/do': { input: z.strictObject({ swimmerId: idSchema, token: z.string() }), output: startedJobSchema },
} as const;
