import type { App } from 'electron';

/** Lets what is still at work stop and clean up before the program ends. */
export function closeBeforeQuit(app: Pick<App, 'on' | 'quit'>, close: () => Promise<void>): void {
  let closed = false;
  app.on('before-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    void close()
      .catch((error: unknown) => console.error('Submark could not end its work in order:', error))
      .finally(() => {
        closed = true;
        app.quit();
      });
  });
}
