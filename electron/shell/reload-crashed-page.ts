import { type App, dialog } from 'electron';
import { shellWords } from '#core/words/shell';

/** A page that goes down oftener than this within the time is not loaded again by itself. Our own limits. */
const reloadsAtMost = 3;
const withinMs = 60_000;

/**
 * Loads a page again whose process ended (out of memory, a crash in a decoder): its marks are on disk or in the window's
 * storage, and an empty window would be all a coach sees.
 */
export function reloadCrashedPage(app: App): void {
  app.on('web-contents-created', (_event, contents) => {
    let reloads: number[] = [];
    contents.on('render-process-gone', (_gone, { reason }) => {
      if (reason === 'clean-exit') return;
      console.error(`The window's page ended: ${reason}`);
      const now = performance.now();
      reloads = reloads.filter((at) => now - at < withinMs);
      if (reloads.length < reloadsAtMost) {
        reloads.push(now);
        contents.reload();
        return;
      }
      dialog.showErrorBox(shellWords('windowCantShown'), shellWords('stoppedSeveralTimes'));
    });
  });
}
