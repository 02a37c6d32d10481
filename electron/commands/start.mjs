import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ensureBuild, ensurePackages, root, say } from './set-up.mjs';

const args = process.argv.slice(2);
const flagValue = (flag) => {
  const at = args.indexOf(flag);
  return at < 0 ? undefined : args[at + 1];
};
const known = new Set(['--no-open', '--port', '--library']);
const strange = args.find((each, i) =>
  each.startsWith('--') ? !known.has(each) : !['--port', '--library'].includes(args[i - 1]),
);
if (strange) {
  console.error(`Unknown: ${strange}\nUsage: npm start -- [--no-open] [--port N] [--library FOLDER]`);
  process.exit(2);
}

ensurePackages();
ensureBuild();

/** Electron's program, when it has really been fetched. */
function electronProgram() {
  const folder = path.join(root, 'node_modules', 'electron');
  const name = path.join(folder, 'path.txt');
  if (!existsSync(name)) return null;
  const program = path.join(folder, 'dist', readFileSync(name, 'utf8').trim());
  return existsSync(program) ? program : null;
}

const named = flagValue('--library');
if (named) process.env.SUBMARK_LIBRARY = path.resolve(named);
const program = args.includes('--no-open') ? null : electronProgram();
if (program) {
  say('opening Submark in Electron');
  spawn(program, [path.join(root, '.build', 'electron', 'main.js')], { stdio: 'inherit' }).on(
    'exit',
    (code) => process.exit(code ?? 0),
  );
} else {
  if (!args.includes('--no-open'))
    say('Electron’s program is not on this machine: serving the same app on 127.0.0.1');
  const { startLoopbackApp, wantedLibrary } = await import('../../.build/electron/loopback-app.js');
  const library = wantedLibrary();
  const asked = flagValue('--port');
  const start = (port) =>
    startLoopbackApp({ library, port }).catch((error) => {
      if (error.code === 'EADDRINUSE' && asked === undefined && port !== 0) return start(0);
      console.error(
        error.code === 'EADDRINUSE' ? `Port ${port} is taken; choose another with --port.` : error.message,
      );
      process.exit(1);
    });
  // a browser keeps what the window remembers (look, changes not yet on disk) by address: so the port stays the same
  const portFile = path.join(library.windowFolder, 'port');
  const before = existsSync(portFile) ? Number(readFileSync(portFile, 'utf8')) : 0;
  const usual = Number.isInteger(before) && before > 1023 && before < 65_536 ? before : 0;
  const server = await start(asked === undefined ? usual : Number(asked));
  if (asked === undefined && usual === 0) {
    mkdirSync(path.dirname(portFile), { recursive: true });
    writeFileSync(portFile, `${server.port}\n`);
  }
  say(`library: ${library.path}`);
  const opened = args.includes('--no-open')
    ? false
    : await openWindow(server.startAddress, library.windowFolder);
  say(
    opened
      ? 'Submark is open; press Ctrl-C here to stop it'
      : `open this address (good for one opening): ${server.startAddress}`,
  );
  let stopping = false;
  const stop = () => {
    if (stopping) return;
    stopping = true;
    void server.close().then(() => process.exit(0));
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

/** A bare app window of an installed Chromium, Chrome or Edge; else the default browser; false when neither can be had. */
async function openWindow(address, profile) {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) return false;
  const open = await import('open');
  mkdirSync(profile, { recursive: true });
  // one name at a time: of several, `open` would wait for the window to be closed before it answers
  const wanted = ['chromium', 'chromium-browser', open.apps.chrome, open.apps.edge].flat();
  for (const name of wanted) {
    try {
      const child = await open.openApp(name, {
        arguments: [
          `--app=${address}`,
          `--user-data-dir=${profile}`,
          '--no-first-run',
          '--window-size=1440,900',
        ],
      });
      const failed = await new Promise((done) => {
        child.once('error', () => done(true));
        setTimeout(() => done(child.exitCode !== null && child.exitCode !== 0), 1500);
      });
      if (!failed) return true;
    } catch (error) {
      say(`no window with ${name} (${error.code ?? error.message})`);
    }
  }
  try {
    await open.default(address);
    return true;
  } catch (error) {
    say(`no default browser (${error.code ?? error.message})`);
    return false;
  }
}
