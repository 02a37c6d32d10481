import { type BrowserWindow, dialog, type FileFilter, type OpenDialogOptions } from 'electron';
import { filmEndings, type WantedPlace } from '#core/host-contract/operations/place-operations';

const everything: FileFilter = { name: 'All files', extensions: ['*'] };
const archives: FileFilter = { name: 'Zip archives', extensions: ['zip'] };

/**
 * The system's own dialog for a file, a folder or a new file's name, over the window that asks; null when the coach chose
 * nothing.
 */
export async function pickPlace(window: BrowserWindow | null, wanted: WantedPlace): Promise<string | null> {
  const parent = window && !window.isDestroyed() ? window : null;
  if (wanted === 'new-archive') {
    const options = {
      title: 'Back up the library',
      buttonLabel: 'Back up here',
      defaultPath: 'Submark library.zip',
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
    title: 'Choose a clip',
    filters: [{ name: 'Film', extensions: [...filmEndings] }, everything],
    properties: ['openFile'],
  },
  archive: {
    title: 'Choose a back-up',
    filters: [archives, everything],
    properties: ['openFile'],
  },
  folder: {
    title: 'Choose a folder',
    properties: ['openDirectory', 'createDirectory'],
  },
};
