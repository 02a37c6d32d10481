import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

// Runs on a bare clone: only what Node itself brings may be imported here.
export const root = fileURLToPath(new URL('../..', import.meta.url));
export const say = (words) => console.log(`submark: ${words}`);
const windows = process.platform === 'win32';

/** Runs a command with its output shown; throws with its name when it fails. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: windows, ...options });
  if (done.error) throw done.error;
  if (done.status !== 0)
    throw new Error(`${command} ${args.join(' ')} ended with ${done.status ?? done.signal}`);
}

const stampFile = path.join(root, '.build', 'set-up.json');
const readStamps = () => (existsSync(stampFile) ? JSON.parse(readFileSync(stampFile, 'utf8')) : {});
/** What an earlier start has written down under a name. */
export const readStamp = (name) => readStamps()[name];
/** Writes something down for later starts; undefined forgets it. */
export function writeStamp(name, value) {
  mkdirSync(path.dirname(stampFile), { recursive: true });
  writeFileSync(stampFile, JSON.stringify({ ...readStamps(), [name]: value }));
}

/** Installs the packages of the lockfile when they are not there or the lockfile has changed. */
export function ensurePackages() {
  const lock = createHash('sha256')
    .update(readFileSync(path.join(root, 'package-lock.json')))
    .digest('hex');
  // npm writes this file last, so one newer than the lockfile means a whole install of it, by us or by hand
  const installed = path.join(root, 'node_modules', '.package-lock.json');
  const there = existsSync(installed);
  if (there && readStamp('lock') === lock) return;
  if (there && statSync(installed).mtimeMs > statSync(path.join(root, 'package-lock.json')).mtimeMs) {
    writeStamp('lock', lock);
    return;
  }
  say('installing packages (npm ci) …');
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  writeStamp('lock', lock);
}

function* sources(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const file = path.join(folder, entry.name);
    if (entry.isDirectory()) yield* sources(file);
    else if (/\.(ts|tsx|css|html|mjs)$/.test(entry.name)) yield file;
  }
}

/** One line for all sources as they are now. */
function sourcesDigest() {
  const hash = createHash('sha256');
  for (const folder of ['shared-core', 'renderer', 'electron'])
    for (const file of [...sources(path.join(root, folder))].sort())
      hash.update(`${file}:${statSync(file).size}:${statSync(file).mtimeMs}\n`);
  return hash.digest('hex');
}

/** Looks at the sources before a build; what it gives back writes down, after it, that these were built. */
export function stampBuild() {
  const digest = sourcesDigest();
  return () => writeStamp('build', digest);
}

/** Builds window and host when a source is newer than the last build. */
export function ensureBuild() {
  if (
    readStamp('build') === sourcesDigest() &&
    existsSync(path.join(root, '.build', 'renderer', 'index.html'))
  )
    return;
  say('building …');
  run(process.execPath, [path.join(root, 'electron', 'commands', 'build.mjs')]);
}
