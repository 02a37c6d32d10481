import { useCallback, useMemo, useRef, useState } from 'react';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { Say } from '../ui/notices';
import { useCommandKeys } from '../ui/use-command-keys';
import { isoDayOf } from '../card/remembered-card';
import { SwimmerDialog } from './swimmer-dialog';
import type { HostClient } from '../host/host-client';
import { AddSwimDialog } from './add-swim-dialog';
import { ChangeCardsDialog } from './change-cards-dialog';
import { ChooseBar } from './choose-bar';
import { EmptyShelf } from './empty-shelf';
import { noFilter } from '../swims/filter-swims';
import { LibraryProblems, LibraryTrouble } from '../swims/library-messages';
import { PathDialog } from './path-dialog';
import { ShelfBar } from './shelf-bar';
import { shelfCommands } from './shelf-commands';
import { ShelfFilters } from './shelf-filters';
import type { ShelfMemory } from './shelf-memory';
import { ShelfList, type ShelfListHandle } from './shelf-list';
import type { TileActs } from './swim-tile';
import { useAdding } from './use-adding';
import { useBin } from './use-bin';
import { BundleDialog } from './bundle-dialog';
import { useBundles } from './use-bundles';
import { useFileDrop } from './use-file-drop';
import { useChoice } from './use-choice';
import { useComingBack } from './use-coming-back';
import { useGridKeys } from './use-grid-keys';
import { type Library, useLibrary } from '../swims/use-library';
import { useCoachDamage } from '../swims/use-coach-damage';
import { useOpenedFiles } from './use-opened-files';
import { useRetakenPictures } from './use-retaken-pictures';
import { useSeeChosen } from './use-see-chosen';
import { useShelfUndo } from './use-shelf-undo';
import { useShownSwims } from './use-shown-swims';
import { VersionsDialog } from './versions-dialog';
import './swim-tile.css';
import './shelf.css';
import '../card/card.css';
import { shelfWords } from '#core/words/shelf';

interface Props {
  readonly host: HostClient;
  readonly memory: ShelfMemory;
  readonly onOpen: (swimId: string) => void;
  readonly say: Say;
}

const countWords = (swims: number, swimmers: number): string =>
  swims === 0 ? '' : shelfWords('swimsSwimmers', { swims, swimmers });

/** What is still on its way while an index is made anew. */
const stillWords = ({ pending, readingsPending }: Library): string =>
  pending > 0
    ? ` ${shelfWords('moreBeingRead', { pending })}`
    : readingsPending > 0
      ? ` ${shelfWords('readingsBeingWorked', { readingsPending })}`
      : '';

/** All swims of the library by swimmer, newest first; files dropped anywhere are added. */
export function Shelf({ host, memory, onOpen, say }: Props) {
  const opened = useLibrary(host);
  useCoachDamage(host, say);
  const { library, load } = opened;
  const { squad, filter, setFilter, all, groups, shown, tabStop } = useShownSwims(library, memory);
  const adding = useAdding(host, load, onOpen);
  const bundles = useBundles(
    host,
    adding.addFiles,
    useCallback(
      (swimId) => {
        memory.setState({ swimId });
        say(shelfWords('swimShelf'));
        void load();
      },
      [memory, say, load],
    ),
  );
  const dropping = useFileDrop(bundles.take);
  useOpenedFiles(host, bundles.take, adding.addReferred, say);
  const list = useRef<ShelfListHandle>(null);
  const focusTile = useCallback((id: string) => list.current?.focus(id), []);
  const undo = useShelfUndo(say);
  const remove = useBin(host, opened, say, undo, focusTile);
  const [changes, setChanges] = useState(false);
  const [asksPath, setAsksPath] = useState(false);
  const [versionsOf, setVersionsOf] = useState<string | null>(null);
  const [swimmerId, setSwimmerId] = useState<string | null>(null);
  const search = useRef<HTMLInputElement>(null);
  const picker = useRef<HTMLInputElement>(null);
  const grid = useRef<HTMLElement>(null);

  useGridKeys(
    grid,
    list,
    useCallback((swimId) => memory.setState({ swimId }), [memory]),
  );
  const pick = useCallback(() => picker.current?.click(), []);
  const openPath = useCallback(() => setAsksPath(true), []);

  const choice = useSeeChosen(useChoice(groups), load);
  const { choose } = choice;
  const acts = useTileActs({ host, onOpen, remove, choose, versions: setVersionsOf });
  const commands = useMemo(
    () =>
      shelfCommands({
        remove,
        choice,
        undo,
        changeCards: () => setChanges(true),
        pick,
        openPath,
        search: () => search.current?.focus(),
      }),
    [remove, choice, undo, pick, openPath],
  );
  useCommandKeys(shelfWords('shelf2'), commands);

  useComingBack(library !== null, memory, focusTile);

  const swimmer = squad.swimmers.find((each) => each.id === swimmerId);
  return (
    <div className={choice.ids.length > 0 ? 'shelf shelf-choosing' : 'shelf'}>
      <ShelfBar
        counts={library ? `${countWords(library.swims.length, all.length)}${stillWords(library)}` : ''}
        onPick={pick}
        onPath={openPath}
        picker={picker}
        onFiles={bundles.take}
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
        <ShelfState
          opened={opened}
          none={groups.length === 0}
          onAdd={pick}
          onPath={openPath}
          onAll={() => setFilter(noFilter)}
        />
        {groups.length > 0 && (
          <ShelfList
            ref={list}
            groups={groups}
            host={host}
            reached={tabStop}
            chosen={choice.set}
            acts={acts}
            onSwimmer={setSwimmerId}
          />
        )}
      </main>
      <ChooseBar
        count={choice.ids.length}
        shown={shown}
        onChange={() => setChanges(true)}
        onSee={choice.see}
        onRemove={() => remove(choice.ids)}
        onAll={choice.all}
        onNone={choice.none}
      />
      {dropping && <div className="shelf-drop">{shelfWords('letGoAddThese')}</div>}
      <BundleDialog bundles={bundles} />
      <AddingDialogs
        host={host}
        adding={adding}
        library={library}
        asksPath={asksPath}
        onPathEnd={() => setAsksPath(false)}
      />
      {changes && choice.ids.length > 0 && (
        <ChangeCardsDialog
          ids={choice.ids}
          squad={squad}
          today={isoDayOf(Date.now())}
          host={host}
          undo={undo}
          load={load}
          onClose={() => setChanges(false)}
        />
      )}
      <SwimDialogs
        host={host}
        say={say}
        versionsOf={versionsOf}
        swimmer={swimmer ?? null}
        onVersions={() => {
          setVersionsOf(null);
          void load();
        }}
        onSwimmer={(changed) => {
          setSwimmerId(null);
          if (changed) void load();
        }}
      />
    </div>
  );
}

interface StateProps {
  readonly opened: ReturnType<typeof useLibrary>;
  /** The filter leaves no swim. */
  readonly none: boolean;
  readonly onAdd: () => void;
  readonly onPath: () => void;
  readonly onAll: () => void;
}

/** What stands where swims would be, or over them. */
function ShelfState({ opened: { library, trouble, load }, none, onAdd, onPath, onAll }: StateProps) {
  return (
    <>
      {trouble && <LibraryTrouble trouble={trouble} onAgain={() => void load()} />}
      {library && <LibraryProblems problems={library.problems} />}
      {!library && !trouble && <output className="shelf-opening">{shelfWords('openingLibrary')}</output>}
      {library && library.swims.length + library.pending === 0 && (
        <EmptyShelf onAdd={onAdd} onPath={onPath} />
      )}
      {library && library.swims.length > 0 && none && <NoMatch total={library.swims.length} onAll={onAll} />}
    </>
  );
}

function NoMatch({ total, onAll }: { readonly total: number; readonly onAll: () => void }) {
  return (
    <div className="no-match">
      <p>{shelfWords('noSwimLike')}</p>
      <button type="button" onClick={onAll}>
        {shelfWords('showAllTotal', { total })}
      </button>
    </div>
  );
}

/** What a tile can have done with its swim. */
function useTileActs(act: {
  readonly host: HostClient;
  readonly onOpen: (swimId: string) => void;
  readonly remove: (swimIds: readonly string[]) => void;
  readonly choose: TileActs['choose'];
  readonly versions: TileActs['versions'];
}): TileActs {
  const { host, onOpen, remove, choose, versions } = act;
  const retake = useRetakenPictures(host);
  return useMemo(
    () => ({ open: onOpen, remove: (id) => remove([id]), choose, versions, retake }),
    [onOpen, remove, choose, versions, retake],
  );
}

interface AddingDialogsProps {
  readonly host: HostClient;
  readonly adding: ReturnType<typeof useAdding>;
  readonly library: Library | null;
  readonly asksPath: boolean;
  readonly onPathEnd: () => void;
}

function AddingDialogs({ host, adding, library, asksPath, onPathEnd }: AddingDialogsProps) {
  return (
    <>
      {asksPath && (
        <PathDialog
          host={host}
          onCancel={onPathEnd}
          onFound={(clip) => {
            onPathEnd();
            adding.addReferred(clip, false);
          }}
        />
      )}
      {adding.current && library && (
        <AddSwimDialog
          key={adding.current.key}
          adding={adding.current}
          waiting={adding.waiting}
          host={host}
          squad={library.squad}
          swims={library.swims}
          onDone={(swimId) => void adding.next(swimId)}
        />
      )}
    </>
  );
}

interface SwimDialogsProps extends Pick<Props, 'host' | 'say'> {
  readonly versionsOf: string | null;
  readonly swimmer: Swimmer | null;
  readonly onVersions: () => void;
  readonly onSwimmer: (changed: boolean) => void;
}

function SwimDialogs({ host, say, versionsOf, swimmer, onVersions, onSwimmer }: SwimDialogsProps) {
  return (
    <>
      {versionsOf && <VersionsDialog swimId={versionsOf} host={host} say={say} onClose={onVersions} />}
      {swimmer && (
        <SwimmerDialog
          key={swimmer.id}
          swimmer={swimmer}
          today={isoDayOf(Date.now())}
          host={host}
          onClose={onSwimmer}
        />
      )}
    </>
  );
}
