import path from 'node:path';
import { electronWindow } from './starting/electron-window.mjs';
import { fetchProgress } from './starting/fetch-progress.mjs';
import { loopbackWindow } from './starting/loopback-window.mjs';
import { readWishes } from './starting/read-wishes.mjs';
import { ensureBuild, ensurePackages, readStamp, root, say, writeStamp } from './set-up.mjs';

const wishes = readWishes(process.argv.slice(2));
if (wishes.unknown) {
  console.error(wishes.unknown);
  process.exit(2);
}

ensurePackages();
ensureBuild();

if (wishes.library) process.env.SUBMARK_LIBRARY = path.resolve(wishes.library);
if (wishes.open) {
  const { ended, instead } = await electronWindow({
    electronPackage: path.join(root, 'node_modules', 'electron'),
    folder: root,
    memory: { read: () => readStamp('electron'), write: (value) => writeStamp('electron', value) },
    say,
    getAgain: wishes.getElectron,
    progress: fetchProgress(),
  });
  if (ended !== undefined) process.exit(ended);
  say(instead);
}
await loopbackWindow({ openIt: wishes.open, port: wishes.port, say });
