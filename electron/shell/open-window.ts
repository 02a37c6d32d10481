import { BrowserWindow } from 'electron';
import { appOrigin } from './app-protocol';
import type { WindowState } from './window-state';

// Electron's security checklist: "Do not enable Node.js integration for remote content", "Enable context isolation",
// "Enable process sandboxing", "Do not disable webSecurity", "Do not allow insecure content", "Do not enable
// experimental features", "Do not use enableBlinkFeatures", "Do not use allowpopups".
export async function openWindow(state: WindowState, preload: string): Promise<BrowserWindow> {
  const window = new BrowserWindow({
    ...state,
    minWidth: 1024,
    minHeight: 640,
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
    },
  });
  await window.loadURL(`${appOrigin}/index.html`);
  return window;
}
