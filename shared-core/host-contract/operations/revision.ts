import { z } from 'zod';

/** A revision names the exact bytes on disk (hex of their SHA-256); writing demands the one last read. */
export const revisionSchema = z.string().regex(/^[0-9a-f]{64}$/);
