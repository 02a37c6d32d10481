import { useEffect, useState } from 'react';
import {
  type ErasePlan,
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

const kindWords: Readonly<Record<ErasePlan['files'][number]['kind'], string>> = {
  swim: 'Swims: clips, marks, cards, thumbnails, earlier versions',
  bin: 'Swims in the bin',
  export: 'Exports',
  generation: 'Earlier versions and removed plans that know the swimmer',
  copy: 'Versions kept aside that know the swimmer',
  cache: 'Index (made again without the swimmer)',
  squad: 'The squad',
  practice: 'Practices',
  trial: 'Trials',
  coach: 'Your own marking error',
  mention: 'Notes on other swims',
};
const leftWords = {
  name: 'has the name',
  id: 'has the squad’s id',
  swim: 'has a swim’s id',
  clip: 'is one of the clips',
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
    <Dialog title={`Erase ${swimmer.name}`} wide onCancel={() => onClose(done !== null)}>
      <JobState job={plan} doing="Looking through the library" />
      <JobState job={erasing} doing="Erasing" />
      {shown && !done && (
        <>
          <p>
            This removes everything of {swimmer.name} in this library, for good: {shown.swims}{' '}
            {shown.swims === 1 ? 'swim' : 'swims'},{' '}
            {shown.files.filter(({ does }) => does === 'remove').length} files of{' '}
            {bytesWords(
              shown.files.reduce((sum, { does, bytes }) => sum + (does === 'remove' ? bytes : 0), 0),
            )}
            . Files written without {swimmer.name}:{' '}
            {shown.files.filter(({ does }) => does === 'change').length}. It can’t be undone.
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
                          {does === 'remove' ? `removed, ${bytesWords(bytes)}` : `without ${words}`}
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
      {done && (
        <div className={done.left.length > 0 ? 'message message-trouble' : 'message'} role="status">
          <p>
            <strong>
              {done.left.length === 0
                ? `✓ Nothing of ${swimmer.name} is left in this library.`
                : `▲ ${done.left.length} files still tell of ${swimmer.name}.`}
            </strong>{' '}
            {done.removed} files removed ({bytesWords(done.bytes)}), {done.changed} written without the
            swimmer. Then all {done.filesLooked} files that remain were looked through: names, ids and the
            films’ fingerprints.
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
      )}
      {outside.length > 0 && (
        <div className="message message-trouble">
          <strong>Outside the library, not touched:</strong>
          <ul>
            {outside.map((path) => (
              <li key={path}>
                <code>{path}</code>
              </li>
            ))}
          </ul>
          Remove these clips yourself, and any copies on cameras, cards and phones.
        </div>
      )}
      {untold.length > 0 && (
        <details>
          <summary>
            {untold.length} exported {untold.length === 1 ? 'file doesn’t' : 'files don’t'} say whom they
            show: look at them yourself
          </summary>
          <ul>
            {untold.map((path) => (
              <li key={path}>
                <code>{path}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="caution">
        Back-ups, other computers’ copies and what was handed out are beyond this library: they are yours to
        remove. A folder service may keep earlier versions of its own.
      </p>
      {shown && !done && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void erase();
          }}
        >
          <label className="path-field">
            Type the swimmer’s name to go on
            <input value={typed} autoComplete="off" onChange={(event) => setTyped(event.target.value)} />
          </label>
          <footer className="dialog-foot">
            <button type="button" className="primary" onClick={() => onClose(false)}>
              Keep {swimmer.name}
            </button>
            <button
              type="submit"
              className="danger"
              disabled={typed.trim() !== swimmer.name.trim() || erasing.running !== null}
            >
              Erase for good
            </button>
          </footer>
        </form>
      )}
      {(done || plan.trouble) && (
        <footer className="dialog-foot">
          <button type="button" className="primary" onClick={() => onClose(done !== null)}>
            Close
          </button>
        </footer>
      )}
    </Dialog>
  );
}
