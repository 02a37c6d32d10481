import { type BrowserWindow, dialog } from 'electron';
import { shellWords } from '#core/words/shell';

/**
 * A page that answers nothing any more: the coach chooses whether to wait for it or to have it loaded again. The question
 * goes by itself when the page answers again.
 */
export function helpHungPage(window: BrowserWindow): void {
  let asking: AbortController | null = null;
  window.on('unresponsive', () => {
    if (asking) return;
    const question = new AbortController();
    asking = question;
    console.error('The window’s page does not answer');
    void dialog
      .showMessageBox(window, {
        type: 'warning',
        title: shellWords('submarkIsntAnswering'),
        message: shellWords('submarkIsntAnswering'),
        detail: shellWords('mayBusyAnswer'),
        buttons: [shellWords('wait'), shellWords('loadAgain')],
        defaultId: 0,
        cancelId: 0,
        noLink: true,
        signal: question.signal,
      })
      .then(({ response }) => {
        if (asking === question) asking = null;
        if (response !== 1 || question.signal.aborted || window.isDestroyed()) return;
        // ended by force it is loaded again, as after a crash; a plain reload would wait for it
        window.webContents.forcefullyCrashRenderer();
      });
  });
  const goes = (): void => {
    asking?.abort();
    asking = null;
  };
  window.on('responsive', goes);
  window.on('closed', goes);
}
