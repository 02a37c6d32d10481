import { dialog } from 'electron';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError, Result } from '#core/host-contract/host-error';
import { usualPlace, type WantedLibrary } from '../host/chosen-library';
import { shellWords } from '#core/words/shell';

/**
 * Opens the wanted library. When it is the chosen one and can't be found, its disk may only want connecting: the coach
 * is asked, as often as needed. Null: the coach would rather quit.
 */
export async function openSomeLibrary<T>(
  wanted: WantedLibrary,
  open: (library: WantedLibrary) => Promise<Result<T>>,
): Promise<Result<T> | null> {
  for (;;) {
    const opened = await open(wanted);
    if (opened.ok || opened.error.code !== 'library-gone') return opened;
    const { response } = await dialog.showMessageBox({
      type: 'question',
      title: shellWords('yourLibraryCant'),
      message: shellWords('yourLibraryCant'),
      detail: shellWords('lastConnectIts', { path: wanted.path }),
      buttons: [shellWords('lookAgain'), shellWords('openUsualLibrary'), shellWords('quit')],
      defaultId: 0,
      cancelId: 2,
    });
    if (response === 1) return open(usualPlace);
    if (response !== 0) return null;
  }
}

/** What to do at a start, where words for a window that is open would speak of the marks in it. */
const atStart: Partial<Record<HostError['code'], 'checkDiskStart' | 'freeSpaceStart'>> = {
  'cannot-write': 'checkDiskStart',
  'disk-full': 'freeSpaceStart',
};

/** Says which library can't be opened, why, and what to do. */
export function sayNoLibrary(error: HostError, { path }: Pick<WantedLibrary, 'path'>): void {
  const { what, todo } = errorWords(error);
  const own = atStart[error.code];
  dialog.showErrorBox(shellWords('submarkCantOpen'), `${what} ${own ? shellWords(own) : todo}\n\n${path}`);
}
