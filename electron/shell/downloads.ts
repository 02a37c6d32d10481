import path from 'node:path';
import { type App, dialog, type Session } from 'electron';
import { isOurs } from './deny-permissions';
import { shellWords } from '#core/words/shell';

/** Asks where a copy shall go, by its own name, where downloads go; says so when it could not be written. */
export function askWhereCopiesGo(session: Session, app: Pick<App, 'getPath'>): void {
  session.on('will-download', (event, item) => {
    if (!isOurs(item.getURL()) && !item.getURL().startsWith('blob:')) {
      event.preventDefault();
      return;
    }
    const name = item.getFilename();
    item.setSaveDialogOptions({
      title: shellWords('saveCopy'),
      buttonLabel: shellWords('save'),
      defaultPath: path.join(app.getPath('downloads'), name),
      filters: filtersOf(name),
      properties: ['showOverwriteConfirmation', 'createDirectory'],
    });
    item.once('done', (_done, state) => {
      if (state !== 'interrupted') return;
      dialog.showErrorBox(shellWords('copyCouldNot'), shellWords('couldNotWritten', { name }));
    });
  });
}

const kinds: Readonly<Record<string, string>> = {
  png: shellWords('picture'),
  pdf: 'PDF',
  mp4: shellWords('video'),
  webm: shellWords('video'),
  csv: shellWords('table'),
  json: shellWords('data'),
  vtt: shellWords('captions'),
  zip: shellWords('archive'),
};

function filtersOf(name: string): { name: string; extensions: string[] }[] {
  const ending = path.extname(name).slice(1).toLowerCase();
  const kind = kinds[ending];
  return [
    ...(kind ? [{ name: kind, extensions: [ending] }] : []),
    { name: shellWords('allFiles'), extensions: ['*'] },
  ];
}
