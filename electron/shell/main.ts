import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, type BrowserWindow, dialog, protocol, screen, session } from 'electron';
import { errorWords } from '#core/host-contract/error-words';
import { createHost } from '../host/create-host';
import { createRequestHandler } from '../host/request-handler';
import { defaultLibraryPath } from '../loopback/loopback-app';
import { registerAppScheme, serveAppScheme } from './app-protocol';
import { denyNavigation } from './deny-navigation';
import { denyPermissions } from './deny-permissions';
import { handleOperations } from './handle-operations';
import { openWindow } from './open-window';
import { keepWindowState, readWindowState } from './window-state';

const root = fileURLToPath(new URL('../..', import.meta.url));

async function open(): Promise<BrowserWindow | null> {
  const host = await createHost({
    libraryPath: defaultLibraryPath(),
    samplesPath: path.join(root, 'sample-clips', 'library'),
  });
  if (!host.ok) {
    const words = errorWords(host.error);
    dialog.showErrorBox('Submark can’t open the library', `${words.what} ${words.todo}`);
    app.quit();
    return null;
  }
  denyPermissions(session.defaultSession);
  handleOperations(host.value);
  serveAppScheme(
    session.defaultSession.protocol,
    createRequestHandler(host.value, path.join(root, '.build', 'renderer')),
  );
  const stateFile = path.join(app.getPath('userData'), 'window.json');
  const screens = screen.getAllDisplays().map((each) => each.workArea);
  const window = await openWindow(
    readWindowState(stateFile, screens),
    path.join(root, '.build', 'electron', 'preload.cjs'),
  );
  keepWindowState(stateFile, window);
  return window;
}

// one window on one library: a second start shows the first one's window and ends
if (app.requestSingleInstanceLock()) {
  registerAppScheme(protocol);
  denyNavigation(app);
  app.on('window-all-closed', () => app.quit());
  app
    .whenReady()
    .then(open)
    .then(
      (window) =>
        app.on('second-instance', () => {
          if (window?.isMinimized()) window.restore();
          window?.focus();
        }),
      (error: unknown) => {
        console.error('Submark could not start:', error);
        app.exit(1);
      },
    );
} else {
  app.quit();
}
