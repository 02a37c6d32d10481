import { z } from 'zod';
import { type FileFormat, type Parsed, parseFile } from '../swim-file/parse-file';
import { idSchema } from '../swim-file/swim-schema';

export const bundleVersion = 1;
export const manifestName = 'manifest.json';

/** What a bundle says of itself: which swim, and every other file in it with size and fingerprint. */
const bundleManifestSchema = z.strictObject({
  format: z.literal('submark-bundle'),
  version: z.literal(bundleVersion),
  madeAt: z.iso.datetime(),
  swimId: idSchema,
  files: z
    .array(
      z.strictObject({
        name: z.string().min(1).max(255),
        bytes: z.number().int().nonnegative(),
        /** Hex of the SHA-256 of its bytes. */
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .min(1)
    .max(8),
});
export type BundleManifest = z.infer<typeof bundleManifestSchema>;

const format: FileFormat<BundleManifest> = {
  format: 'submark-bundle',
  version: bundleVersion,
  schema: bundleManifestSchema,
  migrations: {},
};

export function parseBundleManifest(text: string): Parsed<BundleManifest> {
  return parseFile(format, text);
}
