import { stat } from 'node:fs/promises';
import { type CoachFile, emptyCoach, parseCoach } from '#core/swim-file/coach-file';
import type { Disk } from './atomic-file';
import { fileFailure } from './file-errors';
import { KeptFile } from './kept-file';

export const coachFileOn = (disk: Disk): KeptFile<CoachFile> =>
  new KeptFile(disk, parseCoach, { damaged: 'file-damaged', newer: 'file-newer-version' });

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
