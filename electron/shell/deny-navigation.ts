import type { WebContents } from 'electron';

// Electron's security checklist: "Disable or limit navigation" and "Disable or limit creation of new windows".
export function denyNavigation(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
