import { z } from 'zod';

const placePath = z.string().min(1).max(4096);

/** What the coach is asked for: a film or archive that is there, a folder, or a name for a file that is not there yet. */
export const wantedPlaceSchema = z.enum(['file', 'folder', 'new-file']);
export type WantedPlace = z.infer<typeof wantedPlaceSchema>;

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
