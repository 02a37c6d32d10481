import type { App, BrowserWindow, PowerMonitor } from 'electron';

/**
 * The system is going down or the user signs out. Windows sends no `before-quit` then and waits only for the handler, so
 * the work is begun to be ended and its programs are stopped at once; macOS and Linux wait until we have quit.
 */
export function endWithSystem(
  app: Pick<App, 'quit'>,
  window: Pick<BrowserWindow, 'on'>,
  powerMonitor: Pick<PowerMonitor, 'on'>,
  end: { readonly inOrder: () => Promise<void>; readonly atOnce: () => void },
): void {
  powerMonitor.on('shutdown', (event?: { preventDefault(): void }) => {
    event?.preventDefault();
    app.quit();
  });
  // only Windows has it; the type of the event is not in every Electron
  window.on('session-end', () => {
    void end.inOrder();
    end.atOnce();
  });
}
