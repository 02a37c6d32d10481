import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { browserWindow } from './browser-window.mjs';

/** Serves the built app on 127.0.0.1 and opens it in a browser, until it is stopped. */
export async function loopbackWindow({ openIt, port: asked, say }) {
  const { startLoopbackApp, wantedLibrary } = await import('../../../.build/electron/loopback-app.js');
  const library = wantedLibrary();
  const start = (port) =>
    startLoopbackApp({ library, port }).catch((error) => {
      if (error.code === 'EADDRINUSE' && asked === undefined && port !== 0) return start(0);
      console.error(
        error.code === 'EADDRINUSE' ? `Port ${port} is taken; choose another with --port.` : error.message,
      );
      process.exit(1);
    });
  // a browser keeps changes that are not yet on disk by address: so the port stays the same
  const portFile = path.join(library.windowFolder, 'port');
  const before = existsSync(portFile) ? Number(readFileSync(portFile, 'utf8')) : 0;
  const usual = Number.isInteger(before) && before > 1023 && before < 65_536 ? before : 0;
  const server = await start(asked ?? usual);
  if (asked === undefined && usual === 0) {
    mkdirSync(path.dirname(portFile), { recursive: true });
    writeFileSync(portFile, `${server.port}\n`);
  }
  say(`library: ${library.path}`);
  const opened = openIt && (await browserWindow(server.startAddress, library.windowFolder, say));
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
