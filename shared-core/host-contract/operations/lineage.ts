import { z } from 'zod';
import { idSchema } from '../../swim-file/swim-schema';

/** Whose work a version of a document holds: one window's opening of it, and how many changes that had come to. */
export const authorSchema = z.strictObject({ writer: idSchema, step: z.number().int().nonnegative() });
export type Author = z.infer<typeof authorSchema>;

/** Most earlier openings one version names. Our default; a chain of openings that never saved is short. */
export const mostAncestors = 16;

/** Whose work a file is known to hold. The host remembers it beside the file, and may know nothing. */
export const writtenSchema = z.array(authorSchema);

/**
 * Where a version comes from: its author, and the work it goes on with, such as changes of a window that ended before
 * it could save. With it the host knows a file on disk as an ancestor, although its revision was never told.
 */
export const lineageSchema = authorSchema.extend({ grewFrom: z.array(authorSchema).max(mostAncestors) });
export type Lineage = z.infer<typeof lineageSchema>;

/** Whether work with this lineage holds all that `author` had done. */
export function holds({ writer, step, grewFrom }: Lineage, author: Author): boolean {
  return [{ writer, step }, ...grewFrom].some(
    (each) => each.writer === author.writer && each.step >= author.step,
  );
}

/** Whether some of `authors` had done all that `author` had. */
export function superseded(authors: readonly Author[], author: Author): boolean {
  return authors.some((each) => each.writer === author.writer && each.step >= author.step);
}
