import type { App, WebContents } from 'electron';

// Electron's security checklist: "Disable or limit navigation", "Disable or limit creation of new windows" and "Verify
// WebView options before creation". It holds for every page ever made, not only for the first window's.
export function denyNavigation(app: App): void {
  app.on('web-contents-created', (_event, contents) => confine(contents));
}

function confine(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
