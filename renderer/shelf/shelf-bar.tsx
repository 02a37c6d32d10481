import type { RefObject } from 'react';
import { PageBar } from '../ui/page-bar';
import { useTip } from '../ui/use-tip';

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
      title={
        <>
          Shelf <small>{counts}</small>
        </>
      }
    >
      <button type="button" onClick={onPath} title={tip('add-path', 'For film too large to copy')}>
        Use a file where it lies…
      </button>
      <button
        type="button"
        className="primary"
        onClick={onPick}
        title={tip('add', 'Choose clips or swim bundles, or drop them anywhere')}
      >
        Add swims…
      </button>
      <input
        ref={picker}
        className="unseen"
        type="file"
        accept="video/*,.mkv,.mov,.mp4,.webm,.zip"
        multiple
        tabIndex={-1}
        aria-label="Clips to add"
        onChange={(event) => {
          onFiles([...(event.target.files ?? [])]);
          event.target.value = '';
        }}
      />
    </PageBar>
  );
}
