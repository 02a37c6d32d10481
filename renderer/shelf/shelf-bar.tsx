import type { RefObject } from 'react';
import { PageBar } from '../ui/page-bar';
import { useTip } from '../ui/use-tip';
import { shelfWords } from '#core/words/shelf';
import { rich } from '../ui/rich';

interface Props {
  /** How much is on the shelf, in words; empty until it is known. */
  readonly counts: string;
  readonly picker: RefObject<HTMLInputElement | null>;
  readonly onPick: () => void;
  readonly onPath: () => void;
  readonly onFiles: (files: readonly File[]) => void;
}

/** The app's name, its look, and the ways to add a swim. */
export function ShelfBar({ counts, picker, onPick, onPath, onFiles }: Props) {
  const tip = useTip();
  return (
    <PageBar
      title={<>{rich(shelfWords.parts('shelf', { counts, small: (inside) => <small>{inside}</small> }))}</>}
    >
      <button type="button" onClick={onPath} title={tip('add-path', shelfWords('filmTooLarge'))}>
        {shelfWords('useFileWhere')}
      </button>
      <button
        type="button"
        className="primary"
        onClick={onPick}
        title={tip('add', shelfWords('chooseClipsOr'))}
      >
        {shelfWords('addSwims')}
      </button>
      <input
        ref={picker}
        className="unseen"
        type="file"
        accept="video/*,.mkv,.mov,.mp4,.webm,.zip"
        multiple
        tabIndex={-1}
        aria-label={shelfWords('clipsAdd')}
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </PageBar>
  );
}
