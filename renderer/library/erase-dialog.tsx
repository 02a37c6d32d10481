import { useEffect, useState } from 'react';
import {
  type ErasePlan,
  type Erased,
  erasedSchema,
  erasePlanSchema,
} from '#core/host-contract/operations/upkeep-operations';
import type { Swimmer } from '#core/swim-file/squad-schema';
import { windowMemory } from '../host/window-memory';
import { Dialog } from '../ui/dialog';
import type { HostClient } from '../host/host-client';
import { bytesWords } from '../swims/fact-words';
import { forgetInWindow } from './forget-in-window';
import { JobState } from './job-state';
import { useJob } from './use-job';
import { libraryWords } from '#core/words/library';

const kindWords: Readonly<Record<ErasePlan['files'][number]['kind'], string>> = {
  swim: libraryWords('swimsClipsMarks'),
  bin: libraryWords('swimsBin'),
  export: libraryWords('exports'),
  generation: libraryWords('earlierVersionsRemoved'),
  copy: libraryWords('versionsKeptAside'),
  cache: 'Index (made again without the swimmer)',
  squad: libraryWords('squad'),
  practice: libraryWords('practices'),
  trial: libraryWords('trials'),
  coach: libraryWords('yourOwnMarking'),
  mention: libraryWords('notesOtherSwims'),
};
const leftWords = {
  name: libraryWords('hasName'),
  id: 'has the squad’s id',
  swim: libraryWords('hasSwimsId'),
  clip: libraryWords('oneClips'),
};

interface Props {
  readonly swimmer: Swimmer;
  readonly host: HostClient;
  readonly onClose: (erased: boolean) => void;
}

/** Forgets an erased swimmer in the window's own storage and in what it remembers with the host. */
const forgetHere = (gone: Parameters<typeof forgetInWindow>[1]): void => {
  for (const storage of [window.localStorage, windowMemory]) forgetInWindow(storage, gone);
};

/** Shows exactly what erasing a swimmer removes and changes, asks, does it, and shows the proof. */
export function EraseDialog({ swimmer, host, onClose }: Props) {
  const plan = useJob(host, erasePlanSchema);
  const erasing = useJob(host, erasedSchema);
  const [typed, setTyped] = useState('');
  const { start } = plan;
  useEffect(
    () => void start(() => host.call('erase/plan', { swimmerId: swimmer.id })),
    [start, host, swimmer.id],
  );
  const shown = plan.result;
  const done = erasing.result;
  const erase = async (): Promise<void> => {
    if (!shown) return;
    const erased = await erasing.start(() =>
      host.call('erase/do', { swimmerId: swimmer.id, token: shown.token }),
    );
    if (erased) forgetHere({ swimmer, swimIds: erased.swimIds });
  };
  const outside = done?.outside ?? shown?.outside ?? [];
  const untold = done?.exportsUntold ?? shown?.exportsUntold ?? [];
  return (
    <Dialog
      title={libraryWords('erase', { name: swimmer.name })}
      wide
      onCancel={() => onClose(done !== null)}
    >
      <JobState job={plan} doing={libraryWords('lookingThroughLibrary')} />
      <JobState job={erasing} doing={libraryWords('erasing')} />
      {shown && !done && (
        <>
          <p>
            {libraryWords('removesEverythingLibrary', {
              swims: shown.swims,
              name: swimmer.name,
              files: shown.files.filter(({ does }) => does === 'remove').length,
              bytes: bytesWords(
                shown.files.reduce((sum, { does, bytes }) => sum + (does === 'remove' ? bytes : 0), 0),
              ),
              files2: shown.files.filter(({ does }) => does === 'change').length,
            })}
          </p>
          <div className="erase-list">
            {(Object.keys(kindWords) as (keyof typeof kindWords)[]).map((kind) => {
              const files = shown.files.filter((each) => each.kind === kind);
              return files.length === 0 ? null : (
                <details key={kind} open={files.length <= 12}>
                  <summary>
                    {kindWords[kind]} <small>{files.length}</small>
                  </summary>
                  <ul>
                    {files.map(({ path, does, words, bytes }) => (
                      <li key={path}>
                        <code>{path}</code>{' '}
                        <small>
                          {does === 'remove'
                            ? libraryWords('removed', { bytes: bytesWords(bytes) })
                            : libraryWords('without', { words })}
                        </small>
                      </li>
                    ))}
                  </ul>
                </details>
              );
            })}
          </div>
        </>
      )}
      {done && <ErasedReport done={done} name={swimmer.name} />}
      {outside.length > 0 && (
        <div className="message message-trouble">
          <strong>{libraryWords('outsideLibraryNot')}</strong>
          <ul>
            {outside.map((path) => (
              <li key={path}>
                <code>{path}</code>
              </li>
            ))}
          </ul>
          {libraryWords('removeTheseClips')}
        </div>
      )}
      {untold.length > 0 && (
        <details>
          <summary>{libraryWords('exportedFilesDont', { untold: untold.length })}</summary>
          <ul>
            {untold.map((path) => (
              <li key={path}>
                <code>{path}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="caution">{libraryWords('backUpsOther')}</p>
      {shown && !done && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void erase();
          }}
        >
          <label className="path-field">
            {libraryWords('typeSwimmersName')}
            <input value={typed} autoComplete="off" onChange={(event) => setTyped(event.target.value)} />
          </label>
          <footer className="dialog-foot">
            <button type="button" className="primary" onClick={() => onClose(false)}>
              {libraryWords('keep', { name: swimmer.name })}
            </button>
            <button
              type="submit"
              className="danger"
              disabled={typed.trim() !== swimmer.name.trim() || erasing.running !== null}
            >
              {libraryWords('eraseGood')}
            </button>
          </footer>
        </form>
      )}
      {(done || plan.trouble) && (
        <footer className="dialog-foot">
          <button type="button" className="primary" onClick={() => onClose(done !== null)}>
            {libraryWords('close')}
          </button>
        </footer>
      )}
    </Dialog>
  );
}

/** The proof of an erasing: what was removed, and what still mentions the swimmer. */
function ErasedReport({ done, name }: { readonly done: Erased; readonly name: string }) {
  return (
    <div className={done.left.length > 0 ? 'message message-trouble' : 'message'} role="status">
      <p>
        <strong>
          {done.left.length === 0
            ? libraryWords('nothingLeftLibrary', { name: name })
            : libraryWords('filesStillTell', { left: done.left.length, name: name })}
        </strong>{' '}
        {libraryWords('filesRemovedWritten', {
          removed: done.removed,
          bytes: bytesWords(done.bytes),
          changed: done.changed,
          filesLooked: done.filesLooked,
        })}
      </p>
      {done.left.length > 0 && (
        <ul>
          {done.left.map(({ path, what }) => (
            <li key={path}>
              <code>{path}</code> {leftWords[what]}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
