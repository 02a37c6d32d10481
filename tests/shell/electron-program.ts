import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface ElectronProgram {
  readonly path: string;
  /** What names the app to it. */
  readonly args: readonly string[];
  readonly version: string;
  /** A folder to remove afterwards. */
  readonly made: string | null;
}

const programName = { win32: 'electron.exe', darwin: 'Electron.app/Contents/MacOS/Electron' } as const;

/** Electron of the folder that SUBMARK_ELECTRON_FOLDER names, made ready to start this project's app. */
export function electronProgram(): ElectronProgram {
  const folder = process.env['SUBMARK_ELECTRON_FOLDER'];
  if (!folder) throw new Error('SUBMARK_ELECTRON_FOLDER names no folder');
  const name = process.platform in programName ? programName[process.platform as 'win32'] : 'electron';
  const program = path.join(folder, name);
  const version = execFileSync(program, ['-p', 'process.versions.electron'], {
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
    encoding: 'utf8',
  }).trim();
  // before 28 the main process can't be an ES module
  const app = Number.parseInt(version, 10) < 28 ? path.join(root, '.build', 'commonjs') : root;
  const resources =
    process.platform === 'darwin'
      ? path.join(folder, 'Electron.app/Contents/Resources')
      : path.join(folder, 'resources');
  if (existsSync(path.join(resources, 'default_app.asar')))
    return { path: program, args: [app], version, made: null };
  return { ...besideApp(folder, name, app), version };
}

/**
 * One that was taken out of a packed app opens only the app beside it: a folder with the same program, whose other files
 * are links, and this project's app beside them.
 */
function besideApp(folder: string, name: string, app: string): Omit<ElectronProgram, 'version'> {
  const made = mkdtempSync(path.join(tmpdir(), 'submark-electron-'));
  for (const each of readdirSync(folder)) {
    if (each === 'resources') continue;
    const from = path.join(folder, each);
    const stats = statSync(from);
    // programs look for their files beside where they really lie
    if (stats.isFile() && (stats.mode & 0o111) !== 0 && !/\.so(\.|$)/.test(each))
      copyFileSync(from, path.join(made, each));
    else symlinkSync(from, path.join(made, each));
  }
  mkdirSync(path.join(made, 'resources'));
  symlinkSync(app, path.join(made, 'resources', 'app'));
  return { path: path.join(made, name), args: [], made };
}
