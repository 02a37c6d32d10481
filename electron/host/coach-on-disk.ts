import { stat } from 'node:fs/promises';
import path from 'node:path';
import { type Result, success } from '#core/host-contract/host-error';
import { type CoachFile, emptyCoach, parseCoach } from '#core/swim-file/coach-file';
import { type Disk, revisionOf } from '../disk/atomic-file';
import { fileFailure } from '../disk/file-errors';
import { KeptFile } from './kept-file';

export const coachFileOn = (disk: Disk): KeptFile<CoachFile> =>
  new KeptFile(disk, parseCoach, { damaged: 'file-damaged', newer: 'file-newer-version' });

/** The coach's file as it was found. */
export interface ReadCoach {
  readonly coach: CoachFile;
  readonly revision: string | null;
  /** Name beside it under which a text that can't be read is kept; null where there is none. */
  readonly setAside: string | null;
}

/**
 * The coach's file, or an empty one where there is none. A damaged file without an earlier good copy is kept beside itself as
 * `coach.damaged-….json` and stands for an empty one, so that marking again can go on; each read of the file reports it until a
 * good one takes its place.
 */
export async function readCoach(
  file: KeptFile<CoachFile>,
  at: string,
  disk: Disk,
): Promise<Result<ReadCoach>> {
  const read = await file.readOr(at, emptyCoach);
  if (read.ok) return success({ coach: read.value.value, revision: read.value.revision, setAside: null });
  if (read.error.code !== 'file-damaged') return read;
  try {
    const text = await disk.readText(at);
    const revision = revisionOf(text);
    const { name, ext, dir } = path.parse(at);
    const setAside = `${name}.damaged-${revision.slice(0, 8)}${ext}`;
    await disk.writeWhole(path.join(dir, setAside), text);
    return success({ coach: emptyCoach, revision, setAside });
  } catch (error) {
    return fileFailure(error, path.basename(at), 'writing');
  }
}

/**
 * The coach's file for readings that the host makes itself: read once for each state it is found in. A file that is not
 * there, or can't be read, stands for a coach of whom nothing is measured; who asks for the file itself is told why.
 */
export class CoachOnDisk {
  private known: { readonly stamp: string; readonly coach: Promise<CoachFile> } | null = null;
  private readonly file: KeptFile<CoachFile>;

  constructor(
    private readonly path: string,
    disk: Disk,
  ) {
    this.file = coachFileOn(disk);
  }

  /** Changes whenever the file does. */
  async stamp(): Promise<string> {
    try {
      const { mtimeMs, size, ino } = await stat(this.path);
      return `${mtimeMs}:${size}:${ino}`;
    } catch (error) {
      // what can't be looked at can't be read either: both stand for nothing measured; a bug throws in there
      fileFailure(error, this.path, 'reading');
      return 'none';
    }
  }

  async read(): Promise<CoachFile> {
    const stamp = await this.stamp();
    if (this.known?.stamp !== stamp) this.known = { stamp, coach: this.readFresh() };
    return this.known.coach;
  }

  private async readFresh(): Promise<CoachFile> {
    const read = await this.file.readOr(this.path, emptyCoach);
    return read.ok ? read.value.value : emptyCoach;
  }
}
