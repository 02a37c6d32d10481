import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';
import {
  type Author,
  authorSchema,
  type Lineage,
  lineageSchema,
} from '#core/host-contract/operations/lineage';

/** Most writers that are remembered of a file, the latest ones. Our default. */
const writersKept = 64;

const writersSchema = z.strictObject({
  /** Work that is in the file, or was written over on purpose since. */
  landed: z.array(authorSchema),
  /** Work that was on its way: it landed if the file has, or later had, its revision. */
  tries: z.array(z.strictObject({ revision: z.string(), lineage: lineageSchema })),
});
type FileWriters = z.infer<typeof writersSchema>;

/** What is known of a file as it is now; `last`: whose version it is, null when not known. */
export interface SettledWriters {
  readonly revision: string | null;
  readonly landed: Author[];
  readonly last: Author | null;
}

const notedIn = (file: string): string => path.join(path.dirname(file), '.writers', path.basename(file));

/** Who wrote a file, as noted beside it. Missing or damaged notes say nothing, which only makes us more careful. */
export async function readWriters(file: string): Promise<FileWriters> {
  let text: string;
  try {
    text = await readFile(notedIn(file), 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    return { landed: [], tries: [] };
  }
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    raw = null;
  }
  const parsed = writersSchema.safeParse(raw);
  return parsed.success ? parsed.data : { landed: [], tries: [] };
}

function withLanded(landed: readonly Author[], { writer, step, grewFrom }: Lineage): Author[] {
  const steps = new Map(landed.map((each) => [each.writer, each.step]));
  for (const each of [...grewFrom, { writer, step }]) {
    const known = steps.get(each.writer) ?? 0;
    // taken out first, so that the latest stand last
    steps.delete(each.writer);
    steps.set(each.writer, Math.max(known, each.step));
  }
  return [...steps].slice(-writersKept).map(([each, at]) => ({ writer: each, step: at }));
}

/** Decides by the file's revision which of the noted tries has landed. */
export function settleWriters({ landed, tries }: FileWriters, revision: string | null): SettledWriters {
  const now = tries.findLast((each) => each.revision === revision);
  if (!now) return { revision, landed, last: null };
  const { writer, step } = now.lineage;
  return { revision, landed: withLanded(landed, now.lineage), last: { writer, step } };
}

/**
 * Notes what is about to be written, before it is: a kill between the two leaves a try that never landed, and the
 * version before it stays known through `writers`. Without a lineage nothing is noted of the new version.
 */
export async function noteWrite(
  file: string,
  writers: SettledWriters,
  revision: string,
  lineage: Lineage | undefined,
): Promise<void> {
  if (!lineage && writers.landed.length === 0) return;
  const { landed, last } = writers;
  const tries = [
    ...(last && writers.revision !== null
      ? [{ revision: writers.revision, lineage: { ...last, grewFrom: [] } }]
      : []),
    ...(lineage ? [{ revision, lineage }] : []),
  ];
  const noted = notedIn(file);
  await mkdir(path.dirname(noted), { recursive: true });
  await writeFileAtomic(noted, JSON.stringify({ landed, tries } satisfies FileWriters), { fsync: false });
}
