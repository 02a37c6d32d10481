import { lstat, readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { SwimSummary } from '#core/host-contract/operations/library-operations';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Clip, Swim } from '#core/swim-file/swim-schema';
import type { Disk } from '../../disk/atomic-file';
import { CoachOnDisk } from '../coach-on-disk';
import { containedPath, isPlainName } from '../../disk/contained-path';
import { fileFailure } from '../../disk/file-errors';
import { KnownFingerprints, sameFingerprint } from '../fingerprint';
import { KeptFile } from '../kept-file';
import type { LibraryFolder } from '../library-folder';
import { isSwimCopy } from '../swim-copies';
import type { Indexed } from './shelf-index';
import { summariseSwim } from './summarise-swim';
import { glanceAtSwim } from './swim-glance';
import { hostJobsWords } from '#core/words/host-jobs';

export type ClipStatus = SwimSummary['clipStatus'];

const swimCodes = { damaged: 'swim-damaged', newer: 'swim-newer-version' } as const;

const stampOf = ({ mtimeMs, size, ino }: { mtimeMs: number; size: number; ino: number }): string =>
  `${mtimeMs}:${size}:${ino}`;

/** What comes and goes beside a swim's file without changing it. */
function besideSwim(names: readonly string[]): Pick<SwimSummary, 'hasThumbnail' | 'copies'> {
  return { hasThumbnail: names.includes('thumb.jpg'), copies: names.filter(isSwimCopy).length };
}

/** Reads swims' folders for the shelf: whole, at a glance, or only whether what the index has of them still stands. */
export class SwimFolders {
  readonly file: KeptFile<Swim>;
  private readonly fingerprints = new KnownFingerprints();
  private readonly clips = new Map<string, { readonly stamp: string; readonly clip: Clip }>();
  private readonly coach: CoachOnDisk;

  constructor(
    private readonly library: Pick<LibraryFolder, 'swims' | 'coach'>,
    private readonly disk: Disk,
  ) {
    this.file = new KeptFile(disk, parseSwim, swimCodes);
    this.coach = new CoachOnDisk(library.coach, disk);
  }

  folderOf(id: string): string {
    return path.join(this.library.swims, id);
  }

  swimFile(id: string): string {
    return path.join(this.folderOf(id), 'swim.json');
  }

  /** Changes whenever the coach's own file does, on which every interval rests. */
  coachStamp(): Promise<string> {
    return this.coach.stamp();
  }

  /** An entry of the index with what lies beside the swim now; null when the swim has to be read. */
  async look(id: string, entry: Indexed, coachStamp: string): Promise<Result<Indexed> | null> {
    try {
      const [names, facts] = await Promise.all([readdir(this.folderOf(id)), stat(this.swimFile(id))]);
      if (`${stampOf(facts)} ${coachStamp}` !== entry.stamp) return null;
      const clipStamp = await this.clipStamp(id, entry.place);
      if (clipStamp !== null && clipStamp !== entry.clipStamp) return null;
      const clipStatus = clipStamp === null ? 'missing' : entry.clipSame ? 'present' : 'changed';
      const summary = { ...entry.summary, clipStatus, ...besideSwim(names) } as const;
      return success({ ...entry, summary });
    } catch (error) {
      return fileFailure(error, `${id}/swim.json`, 'reading');
    }
  }

  /** Card and film without readings, the film told by its size alone; null when only `whole` can tell what is there. */
  async glance(id: string): Promise<SwimSummary | null> {
    try {
      const [names, text] = await Promise.all([
        readdir(this.folderOf(id)),
        this.disk.readText(this.swimFile(id)),
      ]);
      const seen = glanceAtSwim(text);
      if (seen?.summary.id !== id) return null;
      const file = await this.clipPath(id, seen.clip);
      return { ...seen.summary, clipStatus: await this.clipBySize(file, seen.clip), ...besideSwim(names) };
    } catch (error) {
      fileFailure(error, `${id}/swim.json`, 'reading');
      return null;
    }
  }

  private async clipBySize(file: string | null, clip: Clip): Promise<ClipStatus> {
    if (file === null) return 'missing';
    try {
      return (await stat(file)).size === clip.fingerprint.bytes ? 'present' : 'changed';
    } catch (error) {
      fileFailure(error, clip.originalName, 'reading');
      return 'missing';
    }
  }

  /** Everything the index keeps of a swim, from its file and its clip. */
  async whole(id: string): Promise<Result<Indexed>> {
    let stamp: string;
    let names: string[];
    try {
      stamp = `${stampOf(await stat(this.swimFile(id)))} ${await this.coach.stamp()}`;
      names = await readdir(this.folderOf(id));
    } catch (error) {
      return fileFailure(error, `${id}/swim.json`, 'reading');
    }
    const read = await this.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { value: swim, revision, recovered } = read.value;
    if (swim.id !== id)
      return failure('swim-damaged', { name: id, where: 'id', what: hostJobsWords('notFoldersName') });
    const { place } = swim.clip;
    const clipStamp = await this.clipStamp(id, place);
    const clipStatus = await this.clipStatus(id, swim.clip);
    return success({
      stamp,
      clipStamp,
      clipSame: clipStatus === 'present',
      place,
      recovered,
      summary: {
        ...summariseSwim(swim, revision, await this.coach.read()),
        clipStatus,
        ...besideSwim(names),
      },
    });
  }

  private async clipStamp(id: string, place: Clip['place']): Promise<string | null> {
    try {
      if (place.kind === 'outside') return stampOf(await stat(place.path));
      const facts = await lstat(path.join(this.folderOf(id), place.name));
      if (!facts.isSymbolicLink()) return isPlainName(place.name) ? stampOf(facts) : null;
      const file = await containedPath(this.folderOf(id), place.name);
      return file === null ? null : stampOf(await stat(file));
    } catch (error) {
      fileFailure(error, id, 'reading');
      return null;
    }
  }

  /**
   * What a swim's file says of its clip; read again only after the file has changed: a film is asked for in hundreds of
   * ranges while its swim is being saved.
   */
  async clipOf(id: string): Promise<Result<Clip>> {
    const stamp = await stat(this.swimFile(id)).then(stampOf, () => null);
    const known = this.clips.get(id);
    if (stamp !== null && known?.stamp === stamp) return success(known.clip);
    const read = await this.file.read(this.swimFile(id));
    if (!read.ok) return read;
    const { clip } = read.value.value;
    if (stamp !== null) this.clips.set(id, { stamp, clip });
    return success(clip);
  }

  /** Where a swim's clip is, whether or not it is there; null when its name would leave the folder. */
  async clipPath(id: string, clip: Pick<Clip, 'place'>): Promise<string | null> {
    if (clip.place.kind === 'outside') return clip.place.path;
    return containedPath(this.folderOf(id), clip.place.name);
  }

  async clipStatus(id: string, clip: Clip): Promise<ClipStatus> {
    const file = await this.clipPath(id, clip);
    if (file === null) return 'missing';
    try {
      return sameFingerprint(await this.fingerprints.of(file), clip.fingerprint) ? 'present' : 'changed';
    } catch (error) {
      fileFailure(error, clip.originalName, 'reading');
      return 'missing';
    }
  }
}
