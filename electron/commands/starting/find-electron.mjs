import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** The program inside Electron's folder, as Electron's own installer names it. */
const programs = {
  darwin: 'Electron.app/Contents/MacOS/Electron',
  win32: 'electron.exe',
};

const read = (file) => (existsSync(file) ? readFileSync(file, 'utf8').trim() : null);

/**
 * Electron's program: in the folder that ELECTRON_OVERRIDE_DIST_PATH names, else where Electron's installer puts it.
 * What an installer of another version or one that was cut short has left does not count.
 * @returns {{ program: string } | { missing: 'not-fetched' | 'not-in-folder' }}
 */
export function findElectron({ electronPackage, env = process.env, platform = process.platform }) {
  const name = programs[platform] ?? 'electron';
  const named = env.ELECTRON_OVERRIDE_DIST_PATH;
  if (named) {
    const program = path.join(named, name);
    return existsSync(program) ? { program } : { missing: 'not-in-folder' };
  }
  const { version } = JSON.parse(readFileSync(path.join(electronPackage, 'package.json'), 'utf8'));
  const program = path.join(electronPackage, 'dist', name);
  const whole =
    // written last of all
    read(path.join(electronPackage, 'path.txt')) === name &&
    read(path.join(electronPackage, 'dist', 'version'))?.replace(/^v/, '') === version &&
    existsSync(program);
  return whole ? { program } : { missing: 'not-fetched' };
}
