import { useCallback, useEffect, useState } from 'react';
import {
  type StorageKind,
  storageKinds,
  storageSchema,
} from '#core/host-contract/operations/upkeep-operations';
import { ConfirmDialog } from '../ui/confirm-dialog';
import type { Say } from '../ui/notices';
import type { HostClient } from '../host/host-client';
import { bytesWords } from '../swims/fact-words';
import { JobState } from './job-state';
import { useJob } from './use-job';
import { libraryWords } from '#core/words/library';

const kindWords: Readonly<Record<StorageKind, string>> = {
  clips: libraryWords('clips'),
  marks: libraryWords('swimsMarksCards'),
  thumbnails: libraryWords('thumbnails'),
  generations: libraryWords('earlierVersions'),
  copies: libraryWords('versionsKeptClash'),
  plans: libraryWords('squadPracticesTrials'),
  exports: libraryWords('exportsStillsHandouts'),
  bin: libraryWords('bin'),
  cache: 'Working copies, index, unfinished uploads',
  other: libraryWords('otherFiles'),
};

/** What is removed only after a question, and the question. */
const questions = {
  exports: {
    button: libraryWords('removeAllExports'),
    title: libraryWords('removeEveryExported'),
    words: libraryWords('stillsHandoutsTables'),
    yes: libraryWords('removeThem'),
  },
  generations: {
    button: libraryWords('removeEarlierVersions'),
    title: libraryWords('removeEveryEarlier'),
    words: libraryWords('eachSwimPractice'),
    yes: libraryWords('removeThem'),
  },
  thumbnails: {
    button: libraryWords('removeThumbnails'),
    title: libraryWords('removeEveryThumbnail'),
    words: libraryWords('smallPicturesShelf'),
    yes: libraryWords('removeThem'),
  },
} as const;
type Asked = keyof typeof questions;
const isAsked = (kind: StorageKind): kind is Asked => kind in questions;

interface Props {
  readonly host: HostClient;
  readonly say: Say;
  /** Changes when something was removed elsewhere on the page. */
  readonly stamp: number;
}

/** What takes room in the library, and what of it can be given back. */
export function StoragePart({ host, say, stamp }: Props) {
  const job = useJob(host, storageSchema);
  const { start } = job;
  const [asks, setAsks] = useState<Asked | null>(null);
  const look = useCallback(() => start(() => host.call('storage/look', {})), [start, host]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked again when something was removed
  useEffect(() => void look(), [look, stamp]);
  const clean = async (what: Asked | 'cache'): Promise<void> => {
    const done = await host.call('storage/clean', { what });
    if (done.ok)
      say(
        libraryWords('filesRemovedGiven', { files: done.value.files, bytes: bytesWords(done.value.bytes) }),
      );
    await look();
  };
  const kinds = job.result?.kinds;
  const most = kinds ? Math.max(1, ...Object.values(kinds).map(({ bytes }) => bytes)) : 1;
  const total = kinds ? Object.values(kinds).reduce((sum, { bytes }) => sum + bytes, 0) : 0;
  return (
    <section className="upkeep upkeep-wide" aria-label={libraryWords('roomTaken')}>
      <h2>
        {libraryWords('roomTaken')} {kinds && <small>{bytesWords(total)}</small>}
      </h2>
      <JobState job={job} doing={libraryWords('addingUp')} />
      {kinds && (
        <table className="storage-table">
          <tbody>
            {storageKinds.map((kind) => (
              <tr key={kind}>
                <th scope="row">{kindWords[kind]}</th>
                <td>
                  {libraryWords('files', {
                    files: kinds[kind].files,
                    files2: kinds[kind].files.toLocaleString(),
                  })}
                </td>
                <td>{kinds[kind].bytes === 0 ? '–' : bytesWords(kinds[kind].bytes)}</td>
                <td className="storage-bar" aria-hidden="true">
                  <span style={{ width: `${(100 * kinds[kind].bytes) / most}%` }} />
                </td>
                <td>
                  {isAsked(kind) && kinds[kind].files > 0 && (
                    <button type="button" className="danger" onClick={() => setAsks(kind)}>
                      {questions[kind].button}
                    </button>
                  )}
                  {kind === 'cache' && kinds.cache.files > 0 && (
                    <button type="button" onClick={() => void clean('cache')}>
                      {libraryWords('makeIndexAnew')}
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {job.result && job.result.clipsOutside > 0 && (
        <p className="caution">
          {libraryWords('clipsLieOutsideLibrary', { clipsOutside: job.result.clipsOutside })}
        </p>
      )}
      {asks && (
        <ConfirmDialog
          {...questions[asks]}
          no={libraryWords('keepThem')}
          onAnswer={(yes) => {
            setAsks(null);
            if (yes) void clean(asks);
          }}
        />
      )}
    </section>
  );
}
