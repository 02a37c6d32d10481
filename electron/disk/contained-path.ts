import { realpath } from 'node:fs/promises';
import path from 'node:path';

/** Names Windows keeps for devices, with or without an ending; a library may be copied there. */
const deviceName = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\..*)?$/i;

/** Whether a name is one plain file name, safe on Windows, macOS and Linux. */
export function isPlainName(name: string): boolean {
  if (name.length === 0 || name.length > 255 || name === '.' || name === '..') return false;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are just what is refused here
  if (/[/\\:*?"<>|\u0000-\u001f\u007f]/.test(name)) return false;
  return !/[. ]$/.test(name) && !deviceName.test(name);
}

/** A plain name made from any name: forbidden characters become '-', devices get a leading '_', long names are cut. */
export function plainName(name: string): string {
  const last = name.split(/[/\\]/).at(-1) ?? '';
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are just what is replaced here
  const cleaned = last.replace(/[:*?"<>|\u0000-\u001f\u007f]/g, '-').replace(/[. ]+$/, '');
  const ending = path.extname(cleaned).slice(0, 20);
  const stem = cleaned.slice(0, cleaned.length - path.extname(cleaned).length);
  const cut = Buffer.byteLength(stem) > 150 ? [...stem].slice(0, 60).join('') : stem;
  const whole = `${cut}${ending}`.replace(/^-+/, '') || 'clip';
  return deviceName.test(whole) ? `_${whole}` : whole;
}

/**
 * The real path of `name` directly inside `folder`, or null when it leaves the folder: by its name, or through a
 * link. The file need not exist yet.
 */
export async function containedPath(folder: string, name: string): Promise<string | null> {
  if (!isPlainName(name)) return null;
  const base = await realpath(folder);
  const target = path.join(base, name);
  try {
    const real = await realpath(target);
    return real === target ? target : null;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return target;
    throw error;
  }
}
