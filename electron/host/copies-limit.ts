import { z } from 'zod';
import { copiesLimitSchema } from '#core/host-contract/operations/media-operations';
import type { Disk } from '../disk/atomic-file';
import { fileFailure } from '../disk/file-errors';
import { prettyJson } from './pretty-json';

const settingsSchema = z.strictObject({
  format: z.literal('submark-settings'),
  version: z.literal(1),
  copiesLimitBytes: copiesLimitSchema,
});

/** The limit the coach chose for this library's working copies, or null: never chosen, or not to be made sense of. */
export async function readCopiesLimit(disk: Disk, file: string): Promise<number | null> {
  let text: string;
  try {
    text = await disk.readText(file);
  } catch (error) {
    fileFailure(error, file, 'reading');
    return null;
  }
  try {
    return settingsSchema.parse(JSON.parse(text)).copiesLimitBytes;
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof z.ZodError) return null;
    throw error;
  }
}

export async function writeCopiesLimit(disk: Disk, file: string, copiesLimitBytes: number): Promise<void> {
  await disk.writeWhole(file, prettyJson({ format: 'submark-settings', version: 1, copiesLimitBytes }));
}
