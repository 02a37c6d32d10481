import type { App, BrowserWindow } from 'electron';

/** Milliseconds that work may take to stop and clean up. Our default: a running ffmpeg is killed after two seconds. */
const closeWithinMs = 10_000;

interface Ending {
  /** Has the page save what is unsaved, with a time limit of its own. */
  readonly save: () => Promise<void>;
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
  { save, close, giveUp, withinMs = closeWithinMs }: Ending,
): End {
  let quitting: 'no' | 'closing' | 'closed' = 'no';
  let ended: Promise<void> | null = null;
  const end = (): Promise<void> => {
    ended ??= (async () => {
      let timer: ReturnType<typeof setTimeout> | undefined;
      const late = new Promise<'late'>((resolve) => {
        timer = setTimeout(() => resolve('late'), withinMs);
      });
      const done = await Promise.race([
        save()
          .then(close)
          .catch((error: unknown) => console.error('Submark could not end its work in order:', error)),
        late,
      ]);
      clearTimeout(timer);
      if (done === 'late') {
        console.error(`Submark’s work did not stop within ${withinMs / 1000} s and was ended`);
        giveUp();
      }
    })();
    return ended;
  };
  app.on('before-quit', (event) => {
    if (quitting === 'closed') return;
    event.preventDefault();
    if (quitting === 'closing') return;
    quitting = 'closing';
    // work that a bug had ended: the coach may have marked since
    const since = ended ? save : async () => undefined;
    void end()
      .then(since)
      .finally(() => {
        quitting = 'closed';
        app.quit();
      });
  });
  return {
    begin: end,
    holdOpen: (window) =>
      window.on('close', (event) => {
        if (quitting === 'closed') return;
        event.preventDefault();
        if (quitting === 'no') app.quit();
      }),
  };
}
