import type { z } from 'zod';
import { cardsWords } from '../words/cards';

/** Why a file of ours can't be opened; closed, so that every caller handles every case. */
export type FileFault =
  | { readonly code: 'not-json' }
  | { readonly code: 'other-format'; readonly expected: string }
  | { readonly code: 'newer-version'; readonly needs: number; readonly known: number }
  | { readonly code: 'damaged'; readonly where: string; readonly what: string };

export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: FileFault };

/** Turns a file of version n into one of version n + 1. */
export type Migration = (old: Readonly<Record<string, unknown>>) => Record<string, unknown>;

export interface FileFormat<T> {
  readonly format: string;
  readonly version: number;
  readonly schema: z.ZodType<T>;
  /** migrations[n] turns version n into n + 1; one for every version before `version`. */
  readonly migrations: Readonly<Record<number, Migration>>;
}

/** Read a file's text: JSON, format name, version, migrations, schema, in that order. Never throws on bad text. */
export function parseFile<T>(format: FileFormat<T>, text: string): Parsed<T> {
  let raw: unknown;
  try {
    raw = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch {
    return { ok: false, fault: { code: 'not-json' } };
  }
  if (typeof raw !== 'object' || raw === null || (raw as { format?: unknown }).format !== format.format)
    return { ok: false, fault: { code: 'other-format', expected: format.format } };
  let record = raw as Record<string, unknown>;
  const version = record['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { ok: false, fault: { code: 'damaged', where: 'version', what: cardsWords('notWholeNumber') } };
  if (version > format.version)
    return { ok: false, fault: { code: 'newer-version', needs: version, known: format.version } };
  for (let from = version; from < format.version; from++) {
    const migrate = format.migrations[from];
    if (!migrate) throw new Error(`no migration of ${format.format} from version ${from}`);
    record = migrate(record);
  }
  const checked = format.schema.safeParse(record);
  if (checked.success) return { ok: true, value: checked.data };
  const issue = checked.error.issues[0];
  return {
    ok: false,
    fault: {
      code: 'damaged',
      where: issue?.path.map(String).join('.') || cardsWords('file'),
      what: issue?.message ?? cardsWords('notValid'),
    },
  };
}
