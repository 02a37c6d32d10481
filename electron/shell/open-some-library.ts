import { dialog } from 'electron';
import type { Result } from '#core/host-contract/host-error';
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
