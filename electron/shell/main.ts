import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, BrowserWindow, dialog, protocol, session } from 'electron';
import { errorWords } from '#core/host-contract/error-words';
import { createHost } from '../host/create-host';
import { createRequestHandler } from '../host/request-handler';
import { defaultLibraryPath } from '../loopback/loopback-app';
import { appOrigin, appScheme, registerAppScheme, serveAppScheme } from './app-protocol';
import { denyNavigation } from './deny-navigation';
import { denyPermissions } from './deny-permissions';
import { handleOperations } from './handle-operations';

const root = fileURLToPath(new URL('../..', import.meta.url));

registerAppScheme(protocol);
if (!app.requestSingleInstanceLock()) app.quit();

async function open(): Promise<void> {
  const host = await createHost({
    libraryPath: defaultLibraryPath(),
    samplesPath: path.join(root, 'sample-clips', 'library'),
  });
  if (!host.ok) {
    const words = errorWords(host.error);
    dialog.showErrorBox('Submark can’t open the library', `${words.what} ${words.todo}`);
    app.quit();
    return;
  }
  const handler = createRequestHandler(host.value, path.join(root, '.build', 'renderer'));
  serveAppScheme(session.defaultSession.protocol, handler);
  denyPermissions(session.defaultSession);
  handleOperations(host.value);
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 640,
    webPreferences: {
      preload: path.join(root, '.build', 'electron', 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      webviewTag: false,
    },
  });
  denyNavigation(window.webContents);
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  await window.loadURL(`${appOrigin}/index.html`);
}

app.on('window-all-closed', () => app.quit());
void app.whenReady().then(open, (error: unknown) => {
  console.error(`${appScheme}: could not start`, error);
  app.exit(1);
});
