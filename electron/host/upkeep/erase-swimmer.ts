import { createHash } from 'node:crypto';
import { readFile, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Erased, ErasePlan } from '#core/host-contract/operations/upkeep-operations';
import { parseDrillBook, serialiseDrillBook } from '#core/practice/drill-file';
import { parsePractice, serialisePractice } from '#core/practice/practice-file';
import { parseTrial, serialiseTrial } from '#core/practice/trial-schema';
import { parseCoach } from '#core/swim-file/coach-file';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Clip, Swim } from '#core/swim-file/swim-schema';
import { fileFailure } from '../../disk/file-errors';
import { fingerprintOf } from '../fingerprint';
import type { JobReport } from '../jobs';
import type { LibraryFolder } from '../library-folder';
import { prettyJson } from '../pretty-json';
import {
  coachWithout,
  drillsWithout,
  practiceWithout,
  squadWithout,
  swimWithout,
  trialWithout,
  type Without,
} from './erase-from-documents';
import { traceFinder, type TraceKind, type Traces } from './swimmer-traces';
import { type WalkedFile, walkFiles } from './walk-files';
import { hostJobsWords } from '#core/words/host-jobs';

/** Film is told by its edges; everything else is looked through as text. */
const film = /\.(mp4|mov|m4v|mkv|webm|avi|mts|m2ts|mpg|mpeg|wmv|3gp)$/i;
const pictures = /\.(jpg|jpeg|png|pdf|gif|webp)$/i;
/** Files longer than this are looked at by name and edges only. Our own limit; no text of a library comes near. */
const textLimit = 64 * 1024 * 1024;

type Fingerprint = Clip['fingerprint'];
const keyOf = ({ bytes, edgesSha256 }: Fingerprint): string => `${bytes}:${edgesSha256}`;

interface Step {
  readonly path: string;
  readonly full: string;
  readonly kind: ErasePlan['files'][number]['kind'];
  readonly words: string;
  readonly bytes: number;
  /** New text of a file that is changed; null: it is removed. */
  readonly text: string | null;
}

interface Survey {
  readonly traces: Traces;
  readonly steps: readonly Step[];
  readonly clips: ReadonlySet<string>;
  readonly outside: readonly string[];
  readonly exportsUntold: readonly string[];
}

const textOf = (file: WalkedFile): Promise<string | null> =>
  file.facts.size > textLimit || film.test(file.name) || pictures.test(file.name)
    ? Promise.resolve(null)
    : readFile(file.full, 'utf8').catch((error: unknown) => {
        fileFailure(error, file.name, 'reading');
        return null;
      });

/** Which swims, on the shelf and in the bin, are the swimmer's: by id, or by name where a card has no id. */
async function ownSwims(
  files: readonly WalkedFile[],
  swimmerId: string,
  name: string,
): Promise<{ folders: Set<string>; swims: Swim[] }> {
  const folders = new Set<string>();
  const swims: Swim[] = [];
  const same = (other: string): boolean =>
    other.trim().toLocaleLowerCase() === name.trim().toLocaleLowerCase();
  for (const file of files) {
    const [, folder] = /^((?:swims|bin)\/[^/]+)\/swim\.json$/.exec(file.name) ?? [];
    if (folder === undefined) continue;
    const text = await textOf(file);
    if (text === null) continue;
    const parsed = parseSwim(text);
    if (parsed.ok) {
      const { card } = parsed.value;
      if (card.swimmerId !== swimmerId && !(card.swimmerId === null && same(card.swimmerName))) continue;
      swims.push(parsed.value);
      folders.add(folder);
    } else if (text.includes(`"${swimmerId}"`)) folders.add(folder);
  }
  return { folders, swims };
}

/** Looks through the whole library and says what has to go and what has to change. Touches nothing. */
async function survey(
  folder: LibraryFolder,
  swimmerId: string,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<Survey>> {
  const squadText = await readFile(folder.squad, 'utf8').catch((error: unknown) => {
    fileFailure(error, 'squad.json', 'reading');
    return '';
  });
  const squad = parseSquad(squadText);
  const swimmer = squad.ok ? squad.value.swimmers.find(({ id }) => id === swimmerId) : undefined;
  if (!swimmer) return failure('not-found', { name: hostJobsWords('swimmer') });
  const files: WalkedFile[] = [];
  for await (const file of walkFiles(folder.root, signal)) files.push(file);
  const { folders, swims } = await ownSwims(files, swimmerId, swimmer.name);
  const traces: Traces = {
    swimmerId,
    name: swimmer.name,
    swimIds: new Set([...folders].map((each) => path.posix.basename(each))),
  };
  const trace = traceFinder(traces);
  const steps: Step[] = [];
  const exportsUntold: string[] = [];
  for (const [at, file] of files.entries()) {
    signal.throwIfAborted();
    if (at % 100 === 0)
      report(at / files.length, hostJobsWords('filesLookedThrough', { at, files: files.length }));
    const own = /^((?:swims|bin)\/[^/]+)\//.exec(file.name)?.[1];
    const step = (kind: Step['kind'], words = '', text: string | null = null): void => {
      steps.push({ path: file.name, full: file.full, kind, words, bytes: file.facts.size, text });
    };
    if (own !== undefined && folders.has(own)) step(own.startsWith('bin/') ? 'bin' : 'swim');
    else if (file.name.startsWith('.cache/')) step('cache');
    else if (file.name.startsWith('exports/')) {
      const text = await textOf(file);
      if (trace(`"${file.name}"`) !== null || (text !== null && trace(text) !== null)) step('export');
      else if (text === null) exportsUntold.push(file.name);
    } else {
      const text = await textOf(file);
      if (text === null || trace(text) === null) continue;
      const aside = /(^|\/)\.(generations|bin)\//.test(file.name);
      const changed = aside ? null : without(file.name, text, traces);
      if (changed) step(changed.kind, changed.words, changed.text);
      else if (aside) step('generation');
      else if (/\.json$/.test(file.name)) step('copy');
    }
  }
  return success({
    traces,
    steps,
    clips: new Set(swims.map(({ clip }) => keyOf(clip.fingerprint))),
    outside: swims.flatMap(({ clip: { place } }) => (place.kind === 'outside' ? [place.path] : [])),
    exportsUntold,
  });
}

/** The file without the swimmer, for those whose place says what they are; null where it is no such file. */
function without(
  name: string,
  text: string,
  traces: Traces,
): { kind: Step['kind']; words: string; text: string } | null {
  const made = <T>(
    kind: Step['kind'],
    parsed: { ok: true; value: T } | { ok: false },
    take: (value: T, traces: Traces) => Without<T> | null,
    serialise: (value: T) => string,
  ): { kind: Step['kind']; words: string; text: string } | null => {
    const left = parsed.ok ? take(parsed.value, traces) : null;
    return left && { kind, words: left.words.join(', '), text: serialise(left.value) };
  };
  if (name === 'squad.json') return made('squad', parseSquad(text), squadWithout, prettyJson);
  if (name === 'drills.json') return made('mention', parseDrillBook(text), drillsWithout, serialiseDrillBook);
  if (name === 'coach.json') return made('coach', parseCoach(text), coachWithout, prettyJson);
  if (/^practices\/[A-Za-z0-9_-]+\.json$/.test(name))
    return made('practice', parsePractice(text), practiceWithout, serialisePractice);
  if (/^trials\/[A-Za-z0-9_-]+\.json$/.test(name))
    return made('trial', parseTrial(text), trialWithout, serialiseTrial);
  if (/^(swims|bin)\/[^/]+\/swim\.json$/.test(name))
    return made('mention', parseSwim(text), swimWithout, serialiseSwim);
  return null;
}

/** Two surveys are of the same library when they would do the same to the same files. */
function tokenOf({ steps, outside }: Survey): string {
  const lines = steps
    .filter(({ kind }) => kind !== 'cache')
    .map((step) => [step.path, step.kind, step.bytes, step.text ?? '']);
  return createHash('sha256')
    .update(JSON.stringify([lines, outside]))
    .digest('hex');
}

/** The exact list of what erasing would remove and change. */
export async function planErasing(
  folder: LibraryFolder,
  swimmerId: string,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<ErasePlan>> {
  const found = await survey(folder, swimmerId, signal, report);
  if (!found.ok) return found;
  const { traces, steps, outside, exportsUntold } = found.value;
  return success({
    swimmerId,
    name: traces.name,
    token: tokenOf(found.value),
    files: steps.map(({ path: name, kind, words, bytes, text }) => ({
      path: name,
      kind,
      does: text === null ? 'remove' : 'change',
      words,
      bytes,
    })),
    swims: traces.swimIds.size,
    outside: [...outside],
    exportsUntold: [...exportsUntold],
  });
}

/**
 * Erases a swimmer: files that are theirs are removed, shared ones are written without them, the squad's entry goes
 * last, so that one that was cut short can be planned and done again. Then the whole library is looked through for
 * what may be left: names and ids in every text and file name, and the edges of every film.
 */
export async function eraseSwimmer(
  folder: LibraryFolder,
  { swimmerId, token }: { readonly swimmerId: string; readonly token: string },
  forget: () => void,
  signal: AbortSignal,
  report: JobReport,
): Promise<Result<Erased>> {
  const found = await survey(folder, swimmerId, signal, (share, words) =>
    report(share && share * 0.3, words),
  );
  if (!found.ok) return found;
  if (tokenOf(found.value) !== token) return failure('conflict', { name: hostJobsWords('library') });
  const { traces, steps, clips, outside, exportsUntold } = found.value;
  forget();
  try {
    const last = steps.filter(({ kind }) => kind === 'squad');
    const ordered = [...steps.filter(({ kind }) => kind !== 'squad'), ...last];
    for (const [at, step] of ordered.entries()) {
      signal.throwIfAborted();
      if (step.text === null) {
        await rm(step.full, { force: true });
        await removeEmpty(path.dirname(step.full), folder);
      } else await writeFileAtomic(step.full, step.text, { fsync: true });
      report(
        0.3 + (0.4 * at) / ordered.length,
        hostJobsWords('files', { at: at + 1, ordered: ordered.length }),
      );
    }
  } catch (error) {
    if (signal.aborted) throw error;
    return fileFailure(error, hostJobsWords('fileSwimmer'), 'writing');
  }
  const proof = await prove(folder, traces, clips, signal, (share, words) =>
    report(0.7 + 0.3 * (share ?? 0), words),
  );
  return success({
    removed: steps.filter(({ text }) => text === null).length,
    changed: steps.filter(({ text }) => text !== null).length,
    bytes: steps.reduce((sum, { text, bytes }) => sum + (text === null ? bytes : 0), 0),
    swimIds: [...traces.swimIds],
    ...proof,
    outside: [...outside],
    exportsUntold: [...exportsUntold],
  });
}

/** A swim's folder goes with its last file, up to the folders that every library has. */
async function removeEmpty(from: string, { root, swims, bin, exports }: LibraryFolder): Promise<void> {
  for (let at = from; ![root, swims, bin, exports].includes(at); at = path.dirname(at))
    try {
      await rmdir(at);
    } catch (error) {
      if (['ENOTEMPTY', 'EEXIST', 'ENOENT'].includes((error as NodeJS.ErrnoException).code ?? '')) return;
      throw error;
    }
}

async function prove(
  folder: LibraryFolder,
  traces: Traces,
  clips: ReadonlySet<string>,
  signal: AbortSignal,
  report: JobReport,
): Promise<Pick<Erased, 'filesLooked' | 'left'>> {
  const trace = traceFinder(traces);
  const left: { path: string; what: TraceKind | 'clip' }[] = [];
  const sizes = new Set([...clips].map((key) => Number(key.split(':')[0])));
  let filesLooked = 0;
  for await (const file of walkFiles(folder.root, signal)) {
    filesLooked += 1;
    if (filesLooked % 100 === 0) report(null, hostJobsWords('filesLookedThroughAgain', { filesLooked }));
    const inName = trace(`"${file.name}"`);
    const text = await textOf(file);
    const what = inName ?? (text === null ? null : trace(text));
    if (what) left.push({ path: file.name, what });
    else if (sizes.has(file.facts.size) && clips.has(keyOf(await fingerprintOf(file.full))))
      left.push({ path: file.name, what: 'clip' });
  }
  return { filesLooked, left };
}
