import path from 'node:path';
import { BrowserWindow } from 'electron';
import { appOrigin } from './app-protocol';
import { firstGround, placeToAsk, smallest, type WindowState } from './window-state';

/** Of Linux' windows: no program there has an icon of its own. */
const windowIcon = 'electron/packing/icons/256x256.png';

// Electron's security checklist: "Do not enable Node.js integration for remote content", "Enable context isolation",
// "Enable process sandboxing", "Do not disable webSecurity", "Do not allow insecure content", "Do not enable
// experimental features", "Do not use enableBlinkFeatures", "Do not use allowpopups".
/**
 * The window, not shown yet and empty: it is shown with its first picture, and until then has the page's own colour.
 * `root` is the project's folder or the archive.
 */
export function makeWindow(state: WindowState, root: string): BrowserWindow {
  const window = new BrowserWindow({
    ...placeToAsk(state),
    width: state.width,
    height: state.height,
    minWidth: smallest.width,
    minHeight: smallest.height,
    show: false,
    // Windows and macOS take it from the program
    ...(process.platform === 'linux' ? { icon: path.join(root, windowIcon) } : {}),
    backgroundColor: state.ground ?? firstGround.ground,
    webPreferences: {
      preload: path.join(root, '.build', 'electron', 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      // Electron fetches dictionaries from the network by itself
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => {
    if (state.maximised) window.maximize();
    window.show();
  });
  return window;
}

export async function openPage(window: BrowserWindow): Promise<void> {
  await window.loadURL(`${appOrigin}/index.html`);
}
