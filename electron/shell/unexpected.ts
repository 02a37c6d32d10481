import { type App, type BrowserWindow, dialog, type MessageBoxOptions } from 'electron';
import { shellWords } from '#core/words/shell';

interface Ways {
  /** Ends what is at work, with a time limit. */
  readonly end: () => Promise<void>;
  /** Has the page save what is unsaved, with a time limit. */
  readonly save: () => Promise<void>;
  /** The window the message stands over. */
  readonly window: () => BrowserWindow | null;
}

/** Most characters of an error's own words in a message. */
const mostWords = 600;

/**
 * A bug in the program around the page: an error nobody awaited. What is half done can't be trusted any more, so work is
 * ended in order, which saves, and the coach chooses whether Submark opens again. Said once; more of them go to the log.
 */
export function endOnBug(
  app: Pick<App, 'relaunch' | 'exit' | 'isReady'>,
  process: Pick<NodeJS.Process, 'on'>,
  { end, save, window }: Ways,
): void {
  let met = false;
  const meet = (error: unknown): void => {
    console.error('Submark met a bug:', error);
    if (met) return;
    met = true;
    void say(error);
  };
  const say = async (error: unknown): Promise<void> => {
    const ended = end().catch((failed: unknown) => console.error('ending after the bug:', failed));
    const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
    try {
      const question: MessageBoxOptions = {
        type: 'error',
        title: shellWords('somethingSubmarkBroke'),
        message: shellWords('somethingSubmarkBroke'),
        detail: `${shellWords('yourMarksSaved')}\n\n${words.slice(0, mostWords)}`,
        buttons: [shellWords('openSubmarkAgain'), shellWords('quit')],
        defaultId: 0,
        cancelId: 1,
        noLink: true,
      };
      const over = window();
      const { response } = await (over && !over.isDestroyed()
        ? dialog.showMessageBox(over, question)
        : dialog.showMessageBox(question));
      await ended;
      // what was marked until the message was there
      await save();
      if (response === 0) app.relaunch();
    } finally {
      app.exit(1);
    }
  };
  process.on('uncaughtException', meet);
  process.on('unhandledRejection', meet);
}

/** A start that failed, whatever the reason: a program that vanishes without a word can't be helped. */
export function sayStartFailed(error: unknown): void {
  console.error('Submark could not start:', error);
  const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
  dialog.showErrorBox(
    shellWords('submarkCantStart'),
    `${shellWords('yourLibraryNot')}\n\n${words.slice(0, mostWords)}`,
  );
}
