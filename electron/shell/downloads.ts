import path from 'node:path';
import { type App, dialog, type Session } from 'electron';
import { isOurs } from './deny-permissions';

/** Asks where a copy shall go, by its own name, where downloads go; says so when it could not be written. */
export function askWhereCopiesGo(session: Session, app: Pick<App, 'getPath'>): void {
  session.on('will-download', (event, item) => {
    if (!isOurs(item.getURL()) && !item.getURL().startsWith('blob:')) {
      event.preventDefault();
      return;
    }
    const name = item.getFilename();
    item.setSaveDialogOptions({
      title: 'Save a copy',
      buttonLabel: 'Save',
      defaultPath: path.join(app.getPath('downloads'), name),
      filters: filtersOf(name),
      properties: ['showOverwriteConfirmation', 'createDirectory'],
    });
    item.once('done', (_done, state) => {
      if (state !== 'interrupted') return;
      dialog.showErrorBox(
        'The copy could not be saved',
        `${name} could not be written there. Check that the disk is connected and has room, then save it again. The file in your library is untouched.`,
      );
    });
  });
}

const kinds: Readonly<Record<string, string>> = {
  png: 'Picture',
  pdf: 'PDF',
  mp4: 'Video',
  webm: 'Video',
  csv: 'Table',
  json: 'Data',
  vtt: 'Captions',
  zip: 'Archive',
};

function filtersOf(name: string): { name: string; extensions: string[] }[] {
  const ending = path.extname(name).slice(1).toLowerCase();
  const kind = kinds[ending];
  return [...(kind ? [{ name: kind, extensions: [ending] }] : []), { name: 'All files', extensions: ['*'] }];
}
