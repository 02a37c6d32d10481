import { createStore } from 'zustand/vanilla';
import { failure, type Result, success } from '#core/host-contract/host-error';
import type { Squad } from '#core/swim-file/squad-schema';
import { coachMarkingError } from '#core/uncertainty/coach-marking-error';
import { createFollowStore } from './follow-store';
import type { HostClient } from '../host/host-client';
import type { StartReader } from './readings-reader';
import { createReadingsStore, type Known } from './readings-store';
import { rhythmOfSwim } from './rhythm-of-swim';
import { wholeClip } from './score-axis';
import { createAutosave } from './autosave';
import { type OpenedSwim, openSwim } from './load-swim';
import { createSwimDocument } from './swim-document';
import type { SwimJournal } from './swim-journal';
import { createViewStore } from './view-store';
import type { OpenFrameSource } from '../video/frame-source';
import { type OpenSwim, clockOf, createFilmStore } from './open-swim';
import { createFilmKeeper } from './film-keeper';
import { openSwimWords } from '#core/words/open-swim';

export interface OpenSwimOptions {
  readonly host: HostClient;
  readonly journal: SwimJournal;
  readonly swimId: string;
  /** Where readings are made. */
  readonly startReader: StartReader;
  readonly say: (words: string) => void;
  readonly openFrameSource: OpenFrameSource;
  readonly signal: AbortSignal;
}

export interface CreatedOpenSwim {
  readonly session: OpenSwim;
  readonly opened: OpenedSwim;
  /** Writes what is unsaved and lets go of everything. */
  close(): Promise<void>;
}

const beforeNextPicture = (job: () => void): (() => void) => {
  const handle = requestAnimationFrame(job);
  return () => cancelAnimationFrame(handle);
};

/** Our default: a clip longer than this opens with a part of it on the score, so that glyphs keep apart. */
const crowdedSeconds = 12;
const firstSeconds = 8;

function firstSpan(whole: { readonly from: number; readonly to: number }) {
  return whole.to - whole.from > crowdedSeconds ? { from: whole.from, to: whole.from + firstSeconds } : null;
}

/** Reads the swim, lays unsaved changes of last time on it, and starts saving and measuring. */
export async function createOpenSwim(options: OpenSwimOptions): Promise<Result<CreatedOpenSwim>> {
  const { host, journal, swimId, startReader, say, openFrameSource, signal } = options;
  const read = await openSwim(host, journal, swimId, signal);
  if (!read.ok) return failure(read.error.code, read.error.detail);
  const opened = read.value;
  const document = createSwimDocument(opened.swim);
  const known = createStore<Known>(() => ({ swimmer: null, markingError: null, coach: null }));
  const readings = createReadingsStore({
    document,
    known,
    startReader,
    rhythmOf: (swim) => rhythmOfSwim(swim, clockOf(swim)),
    soon: beforeNextPicture,
  });
  const autosave = createAutosave({
    document,
    host,
    journal,
    revision: opened.revision,
    unsavedFromStart: opened.replayed,
    grewFrom: opened.grewFrom,
    now: () => new Date(),
  });
  const squad = createStore<{ readonly squad: Squad | null }>(() => ({ squad: null }));
  const film = createFilmStore();
  const session: OpenSwim = {
    host,
    document,
    view: createViewStore({ scoreSpan: firstSpan(wholeClip(clockOf(opened.swim))) }),
    autosave,
    readings,
    film,
    follow: createFollowStore(),
    keeper: createFilmKeeper(() => session, openFrameSource, signal),
    known,
    squad,
    say,
  };
  // who swims is wanted for targets and body length, but the bench does not wait for it
  const recognise = (): void => {
    const { swimmerId } = document.swim().card;
    const swimmer = squad.getState().squad?.swimmers.find((each) => each.id === swimmerId) ?? null;
    if (swimmer !== known.getState().swimmer) known.setState({ swimmer });
  };
  const unsubscribe = document.store.subscribe(recognise);
  void host.call('squad/read', {}, signal).then((read) => {
    if (!read.ok || signal.aborted) return;
    squad.setState({ squad: read.value.squad });
    recognise();
  });
  // nor for how well the coach marks: until it is read, and for what was never re-marked, it is assumed
  void host.call('coach/read', {}, signal).then((read) => {
    if (!read.ok || signal.aborted) return;
    const { coach, setAside } = read.value;
    if (setAside !== null) say(openSwimWords('yourMarkingError', { setAside }));
    known.setState({ coach, markingError: coachMarkingError(coach, opened.swim.clip.height) });
  });
  return success({
    session,
    opened,
    async close() {
      film.getState().source?.close();
      film.setState({ source: null, trouble: null, reopen: null });
      unsubscribe();
      readings.close();
      await autosave.close();
    },
  });
}
