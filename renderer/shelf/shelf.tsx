import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { errorWords } from '#core/host-contract/error-words';
import type { HostError } from '#core/host-contract/host-error';
import type { OperationOutput, SwimSummary } from '#core/host-contract/operations';
import { ThemeSwitch } from '../app/theme-switch';
import type { HostClient } from '../host/host-client';
import { AddSwimDialog } from './add-swim-dialog';
import { filterSwims, noFilter, type ShelfFilter } from './filter-swims';
import { ShelfFilters } from './shelf-filters';
import { SwimTile } from './swim-tile';
import { useFileDrop } from './use-file-drop';
import { useGridKeys } from './use-grid-keys';
import './shelf.css';

type Library = OperationOutput<'library/open'>;

interface Props {
  readonly host: HostClient;
  readonly onOpen: (swimId: string) => void;
  readonly say: (words: string) => void;
}

/** All swims of the library by swimmer, newest first; files dropped anywhere are added. */
export function Shelf({ host, onOpen, say }: Props) {
  const [library, setLibrary] = useState<Library | null>(null);
  const [trouble, setTrouble] = useState<HostError | null>(null);
  const [filter, setFilter] = useState<ShelfFilter>(noFilter);
  const [adding, setAdding] = useState<readonly File[]>([]);
  const [removed, setRemoved] = useState<SwimSummary | null>(null);
  const dropping = useFileDrop(setAdding);
  const picker = useRef<HTMLInputElement>(null);
  const grid = useRef<HTMLDivElement>(null);
  useGridKeys(grid);

  const load = useCallback(async () => {
    const opened = await host.call('library/open', {});
    if (opened.ok) setLibrary(opened.value);
    setTrouble(opened.ok ? null : opened.error);
  }, [host]);
  useEffect(() => {
    void load();
  }, [load]);

  const remove = async (swim: SwimSummary): Promise<void> => {
    const done = await host.call('swim/remove', { id: swim.id });
    if (!done.ok) return say(errorWords(done.error).what);
    setRemoved(swim);
    await load();
  };
  const restore = async (swim: SwimSummary): Promise<void> => {
    const done = await host.call('swim/restore', { id: swim.id });
    if (!done.ok) return say(errorWords(done.error).what);
    setRemoved(null);
    await load();
  };

  const groups = useMemo(() => filterSwims(library?.swims ?? [], filter), [library, filter]);
  return (
    <div className="shelf">
      <header className="shelf-bar">
        <strong className="brand">Submark</strong>
        <ShelfFilters swims={library?.swims ?? []} filter={filter} onChange={setFilter} />
        <ThemeSwitch />
        <button type="button" className="primary" onClick={() => picker.current?.click()}>
          Add swims…
        </button>
        <input
          ref={picker}
          className="unseen"
          type="file"
          accept="video/*,.mkv,.mov,.mp4,.webm"
          multiple
          tabIndex={-1}
          aria-label="Clips to add"
          onChange={(event) => {
            setAdding([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
      </header>
      <main ref={grid}>
        <h1 className="unseen">Shelf</h1>
        {trouble && (
          <div className="shelf-trouble" role="alert">
            <h2>{errorWords(trouble).what}</h2>
            <p>{errorWords(trouble).todo}</p>
            <button type="button" onClick={() => void load()}>
              Try again
            </button>
          </div>
        )}
        {removed && (
          <p className="shelf-removed" role="status">
            {removed.card.swimmerName || 'The swim'} of {removed.card.date} is in the bin.{' '}
            <button type="button" onClick={() => void restore(removed)}>
              Put it back
            </button>
          </p>
        )}
        {library?.problems.map((problem) => {
          const words = errorWords({
            code: problem.code,
            detail: { ...problem.detail, name: problem.folder },
          });
          return (
            <p key={problem.folder} className="shelf-problem" role="alert">
              <strong>{problem.folder}</strong>: {words.what} {words.todo}
            </p>
          );
        })}
        {library && library.swims.length === 0 && (
          <section className="shelf-empty">
            <h2>No swims yet</h2>
            <p>
              Film a short repeat under water, side-on to the lane, then drop the clip anywhere here or choose{' '}
              <em>Add swims…</em>. MP4, MOV, MKV and WebM files work; nothing leaves this computer.
            </p>
          </section>
        )}
        {library && library.swims.length > 0 && groups.length === 0 && (
          <p className="shelf-empty">No swim matches. Clear the search to see all {library.swims.length}.</p>
        )}
        {groups.map((group) => (
          <section key={group.key} aria-label={group.name}>
            <h2>
              {group.name}{' '}
              <small>{group.swims.length === 1 ? '1 swim' : `${group.swims.length} swims`}</small>
            </h2>
            <ul className="shelf-grid">
              {group.swims.map((swim) => (
                <SwimTile
                  key={swim.id}
                  swim={swim}
                  thumbnail={host.thumbnailAddress(swim.id)}
                  onOpen={() => onOpen(swim.id)}
                  onRemove={() => void remove(swim)}
                />
              ))}
            </ul>
          </section>
        ))}
      </main>
      {dropping && <div className="shelf-drop">Let go to add these clips</div>}
      {adding[0] && library && (
        <AddSwimDialog
          key={`${adding[0].name}:${adding[0].lastModified}:${adding.length}`}
          file={adding[0]}
          waiting={adding.length - 1}
          host={host}
          squad={library.squad}
          squadRevision={library.squadRevision}
          onClose={async (swimId) => {
            const rest = adding.slice(1);
            setAdding(rest);
            if (swimId && rest.length === 0) onOpen(swimId);
            else await load();
          }}
        />
      )}
    </div>
  );
}
