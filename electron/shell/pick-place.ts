import path from 'node:path';
import { app, type BrowserWindow, dialog, type FileFilter, type OpenDialogOptions } from 'electron';
import { filmEndings, type WantedPlace } from '#core/host-contract/operations/place-operations';
import { shellWords } from '#core/words/shell';

const everything: FileFilter = { name: shellWords('allFiles'), extensions: ['*'] };
const archives: FileFilter = { name: shellWords('zipArchives'), extensions: ['zip'] };

/**
 * The system's own dialog for a file, a folder or a new file's name, over the window that asks; null when the coach chose
 * nothing.
 */
export async function pickPlace(window: BrowserWindow | null, wanted: WantedPlace): Promise<string | null> {
  const parent = window && !window.isDestroyed() ? window : null;
  if (wanted === 'new-archive') {
    const options = {
      title: shellWords('backUpLibrary'),
      buttonLabel: shellWords('backUpHere'),
      // by its name alone it would go where the program happened to be started
      defaultPath: path.join(app.getPath('documents'), shellWords('submarkLibraryZip')),
      filters: [archives],
      properties: ['showOverwriteConfirmation' as const, 'createDirectory' as const],
    };
    const chosen = await (parent ? dialog.showSaveDialog(parent, options) : dialog.showSaveDialog(options));
    return chosen.canceled || !chosen.filePath ? null : chosen.filePath;
  }
  const options = openOptions[wanted];
  const chosen = await (parent ? dialog.showOpenDialog(parent, options) : dialog.showOpenDialog(options));
  return chosen.canceled ? null : (chosen.filePaths[0] ?? null);
}

const openOptions: Readonly<Record<Exclude<WantedPlace, 'new-archive'>, OpenDialogOptions>> = {
  film: {
    title: shellWords('chooseClip'),
    filters: [{ name: shellWords('film'), extensions: [...filmEndings] }, everything],
    properties: ['openFile'],
  },
  archive: {
    title: shellWords('chooseBackUp'),
    filters: [archives, everything],
    properties: ['openFile'],
  },
  folder: {
    title: shellWords('chooseFolder'),
    properties: ['openDirectory', 'createDirectory'],
  },
};
