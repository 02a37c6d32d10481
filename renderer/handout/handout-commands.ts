import type { Handout } from '#core/handout/handout-file';
import type { Command } from '../ui/command';
import type { Say } from '../ui/notices';
import type { Change } from '../documents/step-history';
import type { OpenHandout } from './open-handout';
import { handoutWords } from '#core/words/handout';

interface Reach {
  readonly document: OpenHandout['document'];
  readonly say: Say;
  /** What saving needs now. */
  readonly latest: {
    readonly current: {
      readonly savePage: (kinds: readonly ('pdf' | 'png')[]) => void;
      readonly ready: boolean;
      readonly busy: boolean;
    };
  };
  readonly change: (name: string, edit: Change<Handout>) => void;
  readonly onLeave: () => void;
}

/** Everything on the handout that has a key. */
export function handoutCommands({ document, say, latest, change, onLeave }: Reach): readonly Command[] {
  const back = (way: 'undo' | 'redo'): void => {
    const done = document[way]();
    if (done) say(`${way === 'undo' ? handoutWords('undone') : handoutWords('doneAgain')}: ${done.name}`);
  };
  const can = (): boolean => latest.current.ready && !latest.current.busy;
  return [
    { id: 'undo', label: handoutWords('undo'), keys: ['$mod+z'], kind: 'never', run: () => back('undo') },
    {
      id: 'redo',
      label: handoutWords('redo'),
      keys: ['$mod+Shift+z', '$mod+Shift+Z', '$mod+y'],
      kind: 'never',
      run: () => back('redo'),
    },
    {
      id: 'paper',
      label: handoutWords('a4OrLetter'),
      keys: ['a'],
      kind: 'undoable',
      run: () =>
        change(handoutWords('paper'), (draft) => {
          draft.paper = draft.paper === 'a4' ? 'letter' : 'a4';
        }),
    },
    {
      id: 'save-pdf',
      label: handoutWords('saveHandoutPdf'),
      keys: ['p'],
      kind: 'never',
      enabled: can,
      run: () => latest.current.savePage(['pdf']),
    },
    {
      id: 'save-png',
      label: handoutWords('saveHandoutPng'),
      keys: ['i'],
      kind: 'never',
      enabled: can,
      run: () => latest.current.savePage(['png']),
    },
    { id: 'to-bench', label: handoutWords('backBench'), keys: ['Escape'], kind: 'view', run: onLeave },
  ];
}
