import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { emptySquad } from '#core/swim-file/squad-file';
import type { Say } from '../app/notices';
import { useCommandKeys } from '../app/use-command-keys';
import { isoDayOf } from '../card/remembered-card';
import { SwimmerDialog } from '../card/swimmer-dialog';
import type { HostClient } from '../host/host-client';
import { AddSwimDialog } from './add-swim-dialog';
import { EmptyShelf } from './empty-shelf';
import { filterSwims, noFilter, type ShelfFilter } from './filter-swims';
import { LibraryProblems, LibraryTrouble } from './library-messages';
import { PathDialog } from './path-dialog';
import { ShelfBar } from './shelf-bar';
import { shelfCommands } from './shelf-commands';
import { ShelfFilters } from './shelf-filters';
import type { ShelfMemory } from './shelf-memory';
import { SwimmerRow } from './swimmer-row';
import { useAdding } from './use-adding';
import { useBin } from './use-bin';
import { useFileDrop } from './use-file-drop';
import { focusTile, useGridKeys } from './use-grid-keys';
import { useLibrary } from './use-library';
import './shelf.css';
import '../card/card.css';

interface Props {
  readonly host: HostClient;
  readonly memory: ShelfMemory;
  readonly onOpen: (swimId: string) => void;
  readonly say: Say;
}

const countWords = (swims: number, swimmers: number): string =>
  swims === 0
    ? ''
    : `${swims} ${swims === 1 ? 'swim' : 'swims'}, ${swimmers} ${swimmers === 1 ? 'swimmer' : 'swimmers'}`;

/** All swims of the library by swimmer, newest first; files dropped anywhere are added. */
export function Shelf({ host, memory, onOpen, say }: Props) {
  const opened = useLibrary(host);
  const { library, trouble, load } = opened;
  const filter = useStore(memory, (state) => state.filter);
  const asked = useDeferredValue(filter);
  const setFilter = useCallback((next: ShelfFilter) => memory.setState({ filter: next }), [memory]);
  const adding = useAdding(host, load, onOpen);
  const dropping = useFileDrop(adding.addFiles);
  const bin = useBin(host, opened, say);
  const [asksPath, setAsksPath] = useState(false);
  const [swimmerId, setSwimmerId] = useState<string | null>(null);
  const search = useRef<HTMLInputElement>(null);
  const picker = useRef<HTMLInputElement>(null);
  const grid = useRef<HTMLElement>(null);

  const reached = useStore(memory, (state) => state.swimId);
  useGridKeys(
    grid,
    useCallback((swimId) => memory.setState({ swimId }), [memory]),
  );
  const pick = useCallback(() => picker.current?.click(), []);
  const openPath = useCallback(() => setAsksPath(true), []);
  const commands = useMemo(
    () => shelfCommands({ bin, pick, openPath, search: () => search.current?.focus() }),
    [bin, pick, openPath],
  );
  useCommandKeys('Shelf', commands);

  const squad = library?.squad ?? emptySquad;
  const swims = library?.swims;
  const all = useMemo(() => filterSwims(swims ?? [], squad, noFilter), [swims, squad]);
  const groups = useMemo(() => filterSwims(swims ?? [], squad, asked), [swims, squad, asked]);
  const shown = groups.reduce((sum, group) => sum + group.swims.length, 0);
  const isReachable = groups.some((group) => group.swims.some((swim) => swim.id === reached));
  const tabStop = isReachable ? reached : (groups[0]?.swims[0]?.id ?? null);

  // coming back from the bench, the coach is where they left
  const isOpen = library !== null;
  useEffect(() => {
    const from = memory.getState().swimId;
    if (isOpen && from) focusTile(from);
  }, [isOpen, memory]);

  const swimmer = squad.swimmers.find((each) => each.id === swimmerId);
  return (
    <div className="shelf">
      <ShelfBar
        counts={library ? countWords(library.swims.length, all.length) : ''}
        onPick={pick}
        onPath={openPath}
        picker={picker}
        onFiles={adding.addFiles}
      />
      {library && library.swims.length > 0 && (
        <ShelfFilters
          all={all}
          shown={shown}
          total={library.swims.length}
          filter={filter}
          search={search}
          onChange={setFilter}
        />
      )}
      <main ref={grid}>
        {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
        {library && <LibraryProblems problems={library.problems} />}
        {!library && !trouble && <output className="shelf-opening">Opening the library…</output>}
        {library && library.swims.length === 0 && <EmptyShelf onAdd={pick} onPath={openPath} />}
        {library && library.swims.length > 0 && groups.length === 0 && (
          <div className="no-match">
            <p>No swim is like that.</p>
            <button type="button" onClick={() => setFilter(noFilter)}>
              Show all {library.swims.length}
            </button>
          </div>
        )}
        {groups.map((group) => (
          <SwimmerRow
            key={group.key}
            group={group}
            host={host}
            reached={tabStop}
            onOpen={onOpen}
            onRemove={bin.remove}
            onSwimmer={setSwimmerId}
          />
        ))}
      </main>
      {dropping && <div className="shelf-drop">Let go to add these clips</div>}
      {asksPath && (
        <PathDialog
          host={host}
          onCancel={() => setAsksPath(false)}
          onFound={(clip) => {
            setAsksPath(false);
            adding.addReferred(clip);
          }}
        />
      )}
      {adding.current && library && (
        <AddSwimDialog
          key={adding.current.key}
          adding={adding.current}
          waiting={adding.waiting}
          host={host}
          squad={squad}
          onDone={(swimId) => void adding.next(swimId)}
        />
      )}
      {swimmer && (
        <SwimmerDialog
          key={swimmer.id}
          swimmer={swimmer}
          today={isoDayOf(Date.now())}
          host={host}
          onClose={(changed) => {
            setSwimmerId(null);
            if (changed) void load();
          }}
        />
      )}
    </div>
  );
}
