import path from 'node:path';
import { electronWindow } from './starting/electron-window.mjs';
import { fetchProgress } from './starting/fetch-progress.mjs';
import { loopbackWindow } from './starting/loopback-window.mjs';
import { readOptions } from './starting/read-options.mjs';
import { ensureBuild, ensurePackages, readStamp, root, say, writeStamp } from './set-up.mjs';

const options = readOptions(process.argv.slice(2));
if (options.unknown) {
  console.error(options.unknown);
  process.exit(2);
}

ensurePackages();
ensureBuild();

if (options.library) process.env.SUBMARK_LIBRARY = path.resolve(options.library);
if (options.open) {
  const { ended, instead } = await electronWindow({
    electronPackage: path.join(root, 'node_modules', 'electron'),
    folder: root,
    memory: { read: () => readStamp('electron'), write: (value) => writeStamp('electron', value) },
    say,
    getAgain: options.getElectron,
    progress: fetchProgress(),
  });
  if (ended !== undefined) process.exit(ended);
  say(instead);
}
await loopbackWindow({ openIt: options.open, port: options.port, say });
