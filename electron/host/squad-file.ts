import { parseSquad } from '#core/swim-file/squad-file';
import type { Squad } from '#core/swim-file/squad-schema';
import type { Disk } from '../disk/atomic-file';
import { KeptFile } from './kept-file';

/** The library's squad as a kept file. */
export function squadFileOn(disk: Disk): KeptFile<Squad> {
  return new KeptFile(disk, parseSquad, { damaged: 'squad-damaged', newer: 'squad-newer-version' });
}
