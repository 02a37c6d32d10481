import { useState } from 'react';
import {
  backedUpSchema,
  clipsFoundSchema,
  restoredSchema,
} from '#core/host-contract/operations/upkeep-operations';
import { PageBar } from '../ui/page-bar';
import type { ScreenProps } from '../ui/screen-props';
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
import { libraryWords } from '#core/words/library';
import { rich } from '../ui/rich';
import { BackedUp, ClipsFound, Restored } from './job-results';

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
      <PageBar title={libraryWords('library')} />
      <main>
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {library && (
          <p className="library-where">
            {rich(
              libraryWords.parts('yourLibraryFolder', {
                path: library.path,
                code: (inside) => <code>{inside}</code>,
              }),
            )}
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
          title={libraryWords('backUp')}
          fields={[
            {
              label: libraryWords('newArchive'),
              wanted: 'new-archive',
              placeholder: libraryWords('wholePathEnding'),
            },
          ]}
          button={libraryWords('backUpLibrary')}
          doing={libraryWords('backingUp')}
          job={backUp}
          onStart={([file = '']) => void backUp.start(() => host.call('library/back-up', { file }))}
          done={backUp.result && <BackedUp result={backUp.result} />}
        >
          <p>{libraryWords('everythingLibraryOne')}</p>
        </PathJob>
        <PathJob
          host={host}
          title={libraryWords('makeLibraryBack')}
          fields={[
            { label: libraryWords('archive'), wanted: 'archive', placeholder: libraryWords('wholePathZip') },
            {
              label: libraryWords('newFolder'),
              wanted: 'folder',
              placeholder: libraryWords('wholePathMust'),
            },
          ]}
          button={libraryWords('makeLibrary')}
          doing={libraryWords('unpacking')}
          job={restore}
          onStart={([archive = '', folder = '']) =>
            void restore.start(() => host.call('library/restore', { archive, folder }))
          }
          done={restore.result && <Restored result={restore.result} onOpen={switchTo} />}
        >
          <p>{libraryWords('libraryOpenNow')}</p>
        </PathJob>
        <OpenLibraryPart host={host} onOpen={switchTo} />
        <PathJob
          host={host}
          title={libraryWords('findLostClips')}
          fields={[
            {
              label: libraryWords('folderLook'),
              wanted: 'folder',
              placeholder: libraryWords('wholePathAll'),
            },
          ]}
          button={libraryWords('lookThem')}
          doing={libraryWords('looking')}
          job={find}
          onStart={([folder = '']) =>
            void find.start(() => host.call('clips/find', { folder })).then(() => load())
          }
          done={find.result && <ClipsFound result={find.result} />}
        >
          <p>
            {libraryWords('clipKnownWhat', {
              missing:
                missing === 0 ? libraryWords('everySwimHas') : libraryWords('swimsMissTheir', { missing }),
            })}
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
