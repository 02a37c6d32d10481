import type { App, BrowserWindow } from 'electron';

/** Milliseconds that work may take to stop and clean up. Our default: a running ffmpeg is killed after two seconds. */
const closeWithinMs = 10_000;

interface Ending {
  readonly close: () => Promise<void>;
  /** Called when closing takes too long: ends at once whatever would outlast the program. */
  readonly giveUp: () => void;
  readonly withinMs?: number;
}

export interface End {
  /** Begins that closing by itself. */
  begin(): Promise<void>;
  /** Closing the window is quitting: it stays until its page has saved and work has ended. */
  holdOpen(window: Pick<BrowserWindow, 'on'>): void;
}

/**
 * Lets what is still at work stop and clean up before the program ends, but not for ever: a program without a window
 * that holds the lock would keep Submark from being started again.
 */
export function closeBeforeQuit(
  app: Pick<App, 'on' | 'quit' | 'exit'>,
  { close, giveUp, withinMs = closeWithinMs }: Ending,
): End {
  let state: 'open' | 'closing' | 'closed' = 'open';
  let ended: Promise<void> | null = null;
  const end = (): Promise<void> => {
    ended ??= (async () => {
      state = 'closing';
      let timer: ReturnType<typeof setTimeout> | undefined;
      const late = new Promise<'late'>((resolve) => {
        timer = setTimeout(() => resolve('late'), withinMs);
      });
      const done = await Promise.race([
        close().catch((error: unknown) => console.error('Submark could not end its work in order:', error)),
        late,
      ]);
      clearTimeout(timer);
      if (done === 'late') {
        console.error(`Submark’s work did not stop within ${withinMs / 1000} s and was ended`);
        giveUp();
      }
      state = 'closed';
    })();
    return ended;
  };
  app.on('before-quit', (event) => {
    if (state === 'closed') return;
    event.preventDefault();
    if (state === 'closing') return;
    void end().then(() => app.quit());
  });
  return {
    begin: end,
    holdOpen: (window) =>
      window.on('close', (event) => {
        if (state === 'closed') return;
        event.preventDefault();
        if (state === 'open') app.quit();
      }),
  };
}
