import { isPlainName } from '../../disk/contained-path';

const staysInside = (part: string): boolean =>
  part !== '' && part !== '.' && part !== '..' && !/[\\\0]/.test(part);

/**
 * Folders and name of an archive's file, or null when they could lead out of the folder it is unpacked in. The zip reader
 * refuses the plainest of these too; this wall stands by itself. Where Windows would take a name for a device, a drive or a
 * second stream of another file, that is no name either; elsewhere such files are the coach's own and come back.
 */
export function partsInside(name: string, windows = process.platform === 'win32'): readonly string[] | null {
  const parts = name.split('/');
  return parts.every((part) => staysInside(part) && (!windows || isPlainName(part))) ? parts : null;
}
