import type { App, BrowserWindow, PowerMonitor } from 'electron';

/**
 * Being asked to end by a signal is quitting. Electron does so by itself, but not once something in the program listens to
 * signals too, as what starts ffmpeg does: that would end us on the spot.
 */
export function quitOnSignal(app: Pick<App, 'quit'>, process: Pick<NodeJS.Process, 'on'>): void {
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.on(signal, () => app.quit());
}

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
