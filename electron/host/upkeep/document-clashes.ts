import { readdir, readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { group } from 'd3-array';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { OperationInput } from '#core/host-contract/operations';
import type { Clash, ClashKind, DocumentVersion } from '#core/host-contract/operations/clash-operations';
import { parseDrillBook, serialiseDrillBook } from '#core/practice/drill-file';
import { parsePractice, serialisePractice } from '#core/practice/practice-file';
import { parseTrial, serialiseTrial } from '#core/practice/trial-schema';
import { parseCoach } from '#core/swim-file/coach-file';
import type { Parsed } from '#core/swim-file/parse-file';
import { parseSquad } from '#core/swim-file/squad-file';
import { type Disk, keepGeneration, revisionOf } from '../../disk/atomic-file';
import { containedPath } from '../../disk/contained-path';
import { fileFailure } from '../../disk/file-errors';
import { KeptFile } from '../kept-file';
import type { LibraryFolder } from '../library-folder';
import { prettyJson } from '../pretty-json';

type Fields = Readonly<Record<string, unknown>>;

interface Kind {
  readonly folder: string;
  /** Name of the one file; null: the folder holds many, each named by its id. */
  readonly file: string | null;
  readonly parse: (text: string) => Parsed<Fields>;
  readonly serialise: (value: Fields) => string;
}

/** A document's format, with what it holds seen as plain fields. */
const format = <T extends Fields>(
  parse: (text: string) => Parsed<T>,
  serialise: (value: T) => string,
): Pick<Kind, 'parse' | 'serialise'> => ({
  parse,
  // what is written was read by the same format
  serialise: (value) => serialise(value as T),
});

const kindsIn = (folder: LibraryFolder): Readonly<Record<ClashKind, Kind>> => ({
  squad: { folder: folder.root, file: 'squad.json', ...format(parseSquad, prettyJson) },
  coach: { folder: folder.root, file: 'coach.json', ...format(parseCoach, prettyJson) },
  drills: { folder: folder.root, file: 'drills.json', ...format(parseDrillBook, serialiseDrillBook) },
  practice: { folder: folder.practices, file: null, ...format(parsePractice, serialisePractice) },
  trial: { folder: folder.trials, file: null, ...format(parseTrial, serialiseTrial) },
});

/**
 * The document's own name when this is the name of a copy of it: kept by us (`squad.conflict-…`), or laid there by what
 * keeps a folder alike on two computers (`squad (copy of …).json`). Damaged texts that were set aside are none.
 */
function documentOfCopy(name: string, only: string | null): string | null {
  const [, stem = '', rest = ''] = /^([A-Za-z0-9_-]{1,64})([^A-Za-z0-9_-].*)\.json$/.exec(name) ?? [];
  if (stem === '' || rest.startsWith('.damaged-')) return null;
  const document = `${stem}.json`;
  return only === null || only === document ? document : null;
}

function versionOf(name: string | null, text: string, value: Fields, fileTime: Date): DocumentVersion {
  const said = (key: string): string => (typeof value[key] === 'string' ? (value[key] as string) : '');
  return {
    name,
    revision: revisionOf(text),
    title: said('title'),
    day: said('date'),
    changedAt: said('changedAt') || fileTime.toISOString(),
    holds: Object.fromEntries(
      Object.entries(value).flatMap(([key, list]) => (Array.isArray(list) ? [[key, list.length]] : [])),
    ),
  };
}

const differing = (a: Fields, b: Fields): string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (key) => key !== 'changedAt' && JSON.stringify(a[key]) !== JSON.stringify(b[key]),
  );

/** Squad, coach's file, drills, practices and trials that were changed in two places: both versions, and the choice. */
export class DocumentClashes {
  private readonly kinds: Readonly<Record<ClashKind, Kind>>;

  constructor(
    folder: LibraryFolder,
    private readonly disk: Disk,
  ) {
    this.kinds = kindsIn(folder);
  }

  async list(): Promise<Result<{ clashes: Clash[]; unreadable: string[] }>> {
    const clashes: Clash[] = [];
    const unreadable: string[] = [];
    for (const kind of Object.keys(this.kinds) as ClashKind[]) {
      const { folder, file } = this.kinds[kind];
      let names: string[];
      try {
        names = (await readdir(folder)).sort();
      } catch (error) {
        const failed = fileFailure(error, path.basename(folder), 'reading');
        if (!failed.ok && failed.error.code === 'not-found') continue;
        return failed;
      }
      const copies = group(
        names.flatMap((name) => {
          const document = documentOfCopy(name, file);
          return document === null ? [] : [{ name, document }];
        }),
        ({ document }) => document,
      );
      for (const [document, found] of copies) {
        const inUse = await this.version(kind, document, null);
        const others: Clash['copies'] = [];
        for (const { name } of found) {
          const copy = await this.version(kind, document, name);
          if (copy)
            others.push({ ...copy.version, differs: inUse ? differing(inUse.value, copy.value) : [] });
          else unreadable.push(name);
        }
        if (others.length > 0)
          clashes.push({
            kind,
            id: file === null ? path.parse(document).name : null,
            inUse: inUse?.version ?? null,
            copies: others,
          });
      }
    }
    return success({ clashes, unreadable });
  }

  /** A version of a document; null when it is not there, can't be opened, or is another document. */
  private async version(
    kind: ClashKind,
    document: string,
    copy: string | null,
  ): Promise<{ version: DocumentVersion; value: Fields; text: string } | null> {
    const { folder, file, parse } = this.kinds[kind];
    const place = await containedPath(folder, copy ?? document);
    if (place === null) return null;
    try {
      const text = await readFile(place, 'utf8');
      const parsed = parse(text);
      if (!parsed.ok || (file === null && parsed.value['id'] !== path.parse(document).name)) return null;
      return {
        version: versionOf(copy, text, parsed.value, (await stat(place)).mtime),
        value: parsed.value,
        text,
      };
    } catch (error) {
      fileFailure(error, copy ?? document, 'reading');
      return null;
    }
  }

  async settle({
    kind,
    id,
    copy: name,
    take,
    baseRevision,
  }: OperationInput<'clashes/settle'>): Promise<Result<{ revision: string | null }>> {
    const { folder, file, parse, serialise } = this.kinds[kind];
    const document = file ?? `${id}.json`;
    if (documentOfCopy(name, document) === null) return failure('not-allowed', { name });
    const inUse = await this.version(kind, document, null);
    if ((inUse?.version.revision ?? null) !== baseRevision) return failure('conflict', { name: document });
    const copy = await this.version(kind, document, name);
    if (!copy) return failure('file-damaged', { name });
    const kept = path.join(folder, document);
    let revision = baseRevision;
    if (take === 'copy') {
      const codes = { damaged: 'file-damaged', newer: 'file-newer-version' } as const;
      const written = await new KeptFile(this.disk, parse, codes).write(
        kept,
        serialise(copy.value),
        baseRevision,
      );
      if (!written.ok) return written;
      revision = written.value.revision;
    }
    try {
      // nothing is lost: the version not taken is a generation now, and only then its copy goes
      if (take === 'in-use') await keepGeneration(kept, copy.text);
      await rm(path.join(folder, name));
    } catch (error) {
      return fileFailure(error, name, 'writing');
    }
    return success({ revision });
  }
}
