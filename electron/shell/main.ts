import path from 'node:path';
import {
  app,
  type BrowserWindow,
  Menu,
  nativeTheme,
  powerMonitor,
  powerSaveBlocker,
  protocol,
  screen,
  session,
} from 'electron';
import { wantedLibrary } from '../host/chosen-library';
import { appRoot, openAppHost } from '../host/open-app-host';
import { endTools } from '../media/running-tools';
import { closeBeforeQuit } from './close-before-quit';
import { registerAppScheme, serveAppScheme } from './app-protocol';
import { denyNavigation } from './deny-navigation';
import { denyPermissions } from './deny-permissions';
import { askWhereCopiesGo } from './downloads';
import { filesNamed, type FromSecondStart, hearOfFiles } from './files-to-open';
import { handleOperations } from './handle-operations';
import { helpHungPage } from './hung-page';
import { menuItems } from './menu';
import { openSomeLibrary, sayNoLibrary } from './open-some-library';
import { makeWindow, openPage } from './open-window';
import { takeOwnProfile } from './own-profile';
import { pickPlace } from './pick-place';
import { reloadCrashedPage } from './reload-crashed-page';
import { endWithSystem, quitOnSignal } from './system-shutdown';
import { TaskBar } from './task-bar';
import { tellStarter } from './tell-starter';
import { endOnBug, sayStartFailed } from './unexpected';
import { WindowFrame } from './window-frame';
import { WindowLink } from './window-link';
import { keepWindowState, readWindowState } from './window-state';
import { shellWords } from '#core/words/shell';

const wanted = wantedLibrary();
const link = new WindowLink();
let window: BrowserWindow | null = null;
/** The coach has quit: what breaks off by that is no failed start. */
let quitting = false;
/** Ends what is at work; nothing is before the host is open. */
let endWork = async (): Promise<void> => undefined;

const showWindow = (): void => {
  if (!window || window.isDestroyed()) return;
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
};

async function open(): Promise<void> {
  let taskBar: TaskBar | null = null;
  let frame: WindowFrame | null = null;
  const opened = await openSomeLibrary(wanted, (library) =>
    openAppHost(library, {
      pickPlace: (place) => pickPlace(window, place),
      onWork: (shares) => taskBar?.tell('host', shares),
      window: { show: (face) => frame?.show(face), next: (after) => link.next(after) },
    }),
  );
  if (!opened?.ok) {
    if (opened) sayNoLibrary(opened.error, wanted);
    app.quit();
    return;
  }
  const { host, handler } = opened.value;
  const end = closeBeforeQuit(app, {
    save: () => link.save(),
    close: async () => {
      link.close();
      taskBar?.rest();
      await host.close();
    },
    giveUp: endTools,
  });
  endWork = end.begin;
  denyPermissions(session.defaultSession);
  askWhereCopiesGo(session.defaultSession, app);
  handleOperations(host);
  serveAppScheme(session.defaultSession.protocol, handler);
  const stateFile = path.join(app.getPath('userData'), 'window.json');
  const screens = screen.getAllDisplays().map((each) => each.workArea);
  const state = readWindowState(stateFile, screens);
  window = makeWindow(state, appRoot);
  const kept = keepWindowState(stateFile, window, state);
  end.holdOpen(window);
  helpHungPage(window);
  taskBar = new TaskBar(window, powerSaveBlocker);
  frame = new WindowFrame({ window, nativeTheme, taskBar, kept, setMenu, dark: state.dark });
  endWithSystem(app, window, powerMonitor, { inOrder: endWork, atOnce: endTools });
  await openPage(window);
}

function setMenu(groups: Parameters<typeof menuItems>[0]): void {
  const run = (id: string): void => link.ask({ kind: 'command', id });
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuItems(groups, process.platform === 'darwin', run)));
}

takeOwnProfile(app, wanted);
const files = filesNamed(process.argv, process.cwd(), process.defaultApp ? 2 : 1);

// one window on one library: a second start shows the first one's window with its files, and ends
if (app.requestSingleInstanceLock({ files } satisfies FromSecondStart)) {
  quitOnSignal(app, process);
  endOnBug(app, process, { end: () => endWork(), save: () => link.save(), window: () => window });
  hearOfFiles(app, (paths) => link.ask({ kind: 'files', paths: [...paths] }), showWindow);
  if (files.length > 0) link.ask({ kind: 'files', paths: files });
  registerAppScheme(protocol);
  denyNavigation(app);
  reloadCrashedPage(app);
  setMenu([]);
  app.setAboutPanelOptions({
    applicationName: app.getName(),
    applicationVersion: app.getVersion(),
    copyright: shellWords('mitLicence'),
  });
  app.on('before-quit', () => {
    quitting = true;
  });
  app.on('window-all-closed', () => app.quit());
  app
    .whenReady()
    .then(() => {
      tellStarter();
      return open();
    })
    .catch((error: unknown) => {
      // quit before the page was there: it is no longer loaded, and that is all
      if (quitting) return;
      sayStartFailed(error);
      app.exit(1);
    });
} else {
  app.quit();
}
