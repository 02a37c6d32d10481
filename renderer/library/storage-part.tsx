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

const kindWords: Readonly<Record<StorageKind, string>> = {
  clips: 'Clips',
  marks: 'Swims’ marks and cards',
  thumbnails: 'Thumbnails',
  generations: 'Earlier versions',
  copies: 'Versions kept of a clash or damage',
  plans: 'Squad, practices, trials, drills',
  exports: 'Exports: stills, handouts, tables',
  bin: 'Bin',
  cache: 'Working copies, index, unfinished uploads',
  other: 'Other files',
};

/** What is removed only after a question, and the question. */
const questions = {
  exports: {
    button: 'Remove all exports…',
    title: 'Remove every exported file?',
    words:
      'Stills, handouts and tables in the library’s exports folder are removed for good. Swims and marks stay, so each can be exported again.',
    yes: 'Remove them',
  },
  generations: {
    button: 'Remove earlier versions…',
    title: 'Remove every earlier version?',
    words:
      'Each swim, practice and trial stays as it is now. The last few versions before it, from which a damaged file is put right, are removed for good; new ones are kept from the next change on. Versions kept of a clash stay.',
    yes: 'Remove them',
  },
  thumbnails: {
    button: 'Remove thumbnails…',
    title: 'Remove every thumbnail?',
    words:
      'The small pictures on the shelf are removed. The shelf takes each anew from its film when it comes into sight, where the window can read that film by itself. Clips and marks stay.',
    yes: 'Remove them',
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
    if (done.ok) say(`${done.value.files} files removed, ${bytesWords(done.value.bytes)} given back.`);
    await look();
  };
  const kinds = job.result?.kinds;
  const most = kinds ? Math.max(1, ...Object.values(kinds).map(({ bytes }) => bytes)) : 1;
  const total = kinds ? Object.values(kinds).reduce((sum, { bytes }) => sum + bytes, 0) : 0;
  return (
    <section className="upkeep upkeep-wide" aria-label="Room taken">
      <h2>Room taken {kinds && <small>{bytesWords(total)}</small>}</h2>
      <JobState job={job} doing="Adding up" />
      {kinds && (
        <table className="storage-table">
          <tbody>
            {storageKinds.map((kind) => (
              <tr key={kind}>
                <th scope="row">{kindWords[kind]}</th>
                <td>{kinds[kind].files === 1 ? '1 file' : `${kinds[kind].files.toLocaleString()} files`}</td>
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
                      Make the index anew
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
          {job.result.clipsOutside} {job.result.clipsOutside === 1 ? 'clip lies' : 'clips lie'} outside the
          library, where you left them, and take no room here.
        </p>
      )}
      {asks && (
        <ConfirmDialog
          {...questions[asks]}
          no="Keep them"
          onAnswer={(yes) => {
            setAsks(null);
            if (yes) void clean(asks);
          }}
        />
      )}
    </section>
  );
}
