import { z } from 'zod';

const placePath = z.string().min(1).max(4096);

/** What the coach is asked for: a film or a back-up that is there, a folder, or a name for a back-up not there yet. */
const wantedPlaceSchema = z.enum(['film', 'archive', 'folder', 'new-archive']);
export type WantedPlace = z.infer<typeof wantedPlaceSchema>;

/** Endings of the films that dialogs offer first; any other file may be chosen too. */
export const filmEndings: readonly string[] = [
  ...['mp4', 'm4v', 'mov', 'mkv', 'webm', 'avi', 'mts', 'm2ts', 'mpg', 'mpeg', 'mxf', '3gp', 'wmv'],
];

export const placeOperations = {
  /** Lets the coach point at a place with the system's own dialog; null: nothing was chosen. Only Electron has one. */
  'place/pick': {
    input: z.strictObject({ wanted: wantedPlaceSchema }),
    output: z.strictObject({ path: placePath.nullable() }),
  },
  /**
   * Goes over to another library: one that is there, or a new one in a new or empty folder. Never another folder:
   * `not-a-library`. Remembered for the next start, unless the library was named when the program started.
   */
  'library/switch': {
    input: z.strictObject({ path: placePath }),
    output: z.strictObject({ path: placePath, made: z.boolean(), remembered: z.boolean() }),
  },
} as const;
