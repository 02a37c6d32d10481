import path from 'node:path';
import { app, type BrowserWindow, dialog, protocol, screen, session } from 'electron';
import { errorWords } from '#core/host-contract/error-words';
import { wantedLibrary } from '../host/chosen-library';
import { appRoot, openAppHost } from '../host/open-app-host';
import { closeBeforeQuit } from './close-before-quit';
import { registerAppScheme, serveAppScheme } from './app-protocol';
import { denyNavigation } from './deny-navigation';
import { denyPermissions } from './deny-permissions';
import { handleOperations } from './handle-operations';
import { openSomeLibrary } from './open-some-library';
import { openWindow } from './open-window';
import { pickPlace } from './pick-place';
import { reloadCrashedPage } from './reload-crashed-page';
import { tellStarter } from './tell-starter';
import { keepWindowState, readWindowState } from './window-state';

async function open(): Promise<BrowserWindow | null> {
  const opened = await openSomeLibrary(wantedLibrary(), (library) => openAppHost(library, { pickPlace }));
  if (!opened?.ok) {
    if (opened) {
      const words = errorWords(opened.error);
      dialog.showErrorBox('Submark can’t open the library', `${words.what} ${words.todo}`);
    }
    app.quit();
    return null;
  }
  closeBeforeQuit(app, () => opened.value.host.close());
  denyPermissions(session.defaultSession);
  handleOperations(opened.value.host);
  serveAppScheme(session.defaultSession.protocol, opened.value.handler);
  const stateFile = path.join(app.getPath('userData'), 'window.json');
  const screens = screen.getAllDisplays().map((each) => each.workArea);
  const window = await openWindow(
    readWindowState(stateFile, screens),
    path.join(appRoot, '.build', 'electron', 'preload.cjs'),
  );
  keepWindowState(stateFile, window);
  return window;
}

// one window on one library: a second start shows the first one's window and ends
if (app.requestSingleInstanceLock()) {
  registerAppScheme(protocol);
  denyNavigation(app);
  reloadCrashedPage(app);
  app.on('window-all-closed', () => app.quit());
  app
    .whenReady()
    .then(() => {
      tellStarter();
      return open();
    })
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
