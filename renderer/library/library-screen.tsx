import { useState } from 'react';
import {
  backedUpSchema,
  clipsFoundSchema,
  restoredSchema,
} from '#core/host-contract/operations/upkeep-operations';
import { PageBar } from '../ui/page-bar';
import type { ScreenProps } from '../ui/screen-props';
import { bytesWords } from '../swims/fact-words';
import { LibraryTrouble } from '../swims/library-messages';
import { useLibrary } from '../swims/use-library';
import { ClashesPart } from './clashes-part';
import { BinPart } from './bin-part';
import { EraseDialog } from './erase-dialog';
import { ErasePart } from './erase-part';
import { OpenLibraryPart } from './open-library-part';
import { PathJob } from './path-job';
import { CopiesPart } from './copies-part';
import { StoragePart } from './storage-part';
import { useJob } from './use-job';
import { useSwitchLibrary } from './use-switch-library';
import '../shelf/shelf.css';
import './library.css';

interface Props extends ScreenProps {
  /** Whose erasing is asked for; null: no one's. */
  readonly erase: string | null;
}

/** Keeping the library: room, bin, back-up, lost clips, and erasing a swimmer. */
export function LibraryScreen({ host, say, go, erase }: Props) {
  const { library, trouble, load } = useLibrary(host);
  const [stamp, setStamp] = useState(0);
  const changed = (): void => setStamp((before) => before + 1);
  const backUp = useJob(host, backedUpSchema);
  const restore = useJob(host, restoredSchema);
  const find = useJob(host, clipsFoundSchema);
  const switchTo = useSwitchLibrary(host, say);
  const missing = library?.swims.filter(({ clipStatus }) => clipStatus !== 'present').length ?? 0;
  const swimmers = library?.squad.swimmers ?? [];
  const erased = swimmers.find(({ id }) => id === erase);
  return (
    <div className="library">
      <PageBar title="Library" />
      <main>
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {library && (
          <p className="library-where">
            Your library is the folder <code>{library.path}</code>
          </p>
        )}
        <ClashesPart
          host={host}
          say={say}
          onChanged={() => {
            changed();
            void load();
          }}
        />
        <StoragePart host={host} say={say} stamp={stamp} />
        <CopiesPart host={host} say={say} stamp={stamp} />
        <BinPart host={host} say={say} onChanged={changed} />
        <PathJob
          host={host}
          title="Back up"
          fields={[
            { label: 'New archive', wanted: 'new-archive', placeholder: 'whole path, ending in .zip' },
          ]}
          button="Back up the library"
          doing="Backing up"
          job={backUp}
          onStart={([file = '']) => void backUp.start(() => host.call('library/back-up', { file }))}
          done={
            backUp.result && (
              <>
                ✓ {backUp.result.files.toLocaleString()} files, {bytesWords(backUp.result.bytes)}, written to{' '}
                <code>{backUp.result.path}</code> and read back: every byte is as it was.
                {backUp.result.outside.length > 0 &&
                  ` ${backUp.result.outside.length} clips lie outside the library and are not in it.`}
              </>
            )
          }
        >
          <p>
            Everything in the library in one archive, on another disk if you can. It is read back and checked
            to the last byte before it gets its name, and never goes over another file.
          </p>
        </PathJob>
        <PathJob
          host={host}
          title="Make a library of a back-up"
          fields={[
            { label: 'Archive', wanted: 'archive', placeholder: 'whole path of the .zip' },
            { label: 'New folder', wanted: 'folder', placeholder: 'whole path; must be new or empty' },
          ]}
          button="Make the library"
          doing="Unpacking"
          job={restore}
          onStart={([archive = '', folder = '']) =>
            void restore.start(() => host.call('library/restore', { archive, folder }))
          }
          done={
            restore.result && (
              <>
                ✓ {restore.result.swims} swims, {restore.result.files.toLocaleString()} files, in{' '}
                <code>{restore.result.path}</code>.{' '}
                <button type="button" onClick={() => void switchTo(restore.result?.path ?? '')}>
                  Open this library
                </button>
              </>
            )
          }
        >
          <p>The library open now is not touched. A back-up that is damaged or cut short is refused whole.</p>
        </PathJob>
        <OpenLibraryPart host={host} onOpen={switchTo} />
        <PathJob
          host={host}
          title="Find lost clips"
          fields={[
            {
              label: 'Folder to look in',
              wanted: 'folder',
              placeholder: 'whole path; all folders in it are looked through',
            },
          ]}
          button="Look for them"
          doing="Looking"
          job={find}
          onStart={([folder = '']) =>
            void find.start(() => host.call('clips/find', { folder })).then(() => load())
          }
          done={
            find.result && (
              <>
                {find.result.found.length} found in {find.result.looked.toLocaleString()} files;{' '}
                {find.result.stillMissing} still missing.
                {find.result.closedFolders > 0 &&
                  ` ${find.result.closedFolders} folders could not be looked into.`}
              </>
            )
          }
        >
          <p>
            {missing === 0
              ? 'Every swim has its clip.'
              : `${missing} ${missing === 1 ? 'swim misses its clip' : 'swims miss their clips'}.`}{' '}
            A clip is known by what it holds, whatever its name and folder are now.
          </p>
        </PathJob>
        <ErasePart swimmers={swimmers} go={go} />
      </main>
      {erased && (
        <EraseDialog
          key={erased.id}
          swimmer={erased}
          host={host}
          onClose={(done) => {
            go({ screen: 'library', ids: [] });
            if (done) {
              changed();
              void load();
            }
          }}
        />
      )}
    </div>
  );
}
