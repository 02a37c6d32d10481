import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { CoachFile } from '#core/swim-file/coach-file';
import type { Swim } from '#core/swim-file/swim-schema';
import type { MarkingError } from '#core/uncertainty/marking-error';
import type { ScoreRhythm } from './score-rhythm';
import type { SwimDocument } from './swim-document';
import type { ReadingsOf, StartReader } from './readings-reader';

/** What is known beside the marks: who swims, and how well the coach marks (null: assumed). */
export interface Known {
  readonly swimmer: Swimmer | null;
  readonly markingError: MarkingError | null;
  /** What the marking error was measured from; null until it has been read. */
  readonly coach: CoachFile | null;
}

export interface ReadingsState {
  /** What the marks give: pure functions of the swim, never stored. Empty until they were read a first time. */
  readonly readings: readonly Reading[];
  readonly rhythm: ScoreRhythm;
  /** Marks moved and the readings are still those of before; screens say so. */
  readonly behind: boolean;
  /** What the last computation took, milliseconds. */
  readonly tookMs: number;
}

export interface ReadingsStore {
  readonly store: StoreApi<ReadingsState>;
  close(): void;
}

export interface ReadingsOptions {
  readonly document: SwimDocument;
  readonly known: StoreApi<Known>;
  readonly startReader: StartReader;
  readonly rhythmOf: (swim: Swim) => ScoreRhythm;
  /** Runs a job before the next picture is drawn; jobs asked for meanwhile are one. */
  readonly soon: (job: () => void) => () => void;
}

/** Keeps the readings in step with the marks: asked at most once a screen picture, even during a drag. */
export function createReadingsStore(options: ReadingsOptions): ReadingsStore {
  const { document, known, startReader, rhythmOf, soon } = options;
  const store = createStore<ReadingsState>(() => ({
    readings: [],
    rhythm: rhythmOf(document.swim()),
    behind: true,
    tookMs: 0,
  }));
  let asked: ReadingsOf | null = null;
  const reader = startReader((of, readings, tookMs) =>
    store.setState({ readings, tookMs, behind: of !== asked || cancel !== null }),
  );
  let cancel: (() => void) | null = null;
  const read = (): void => {
    const swim = document.swim();
    const { swimmer, markingError } = known.getState();
    asked = { swim, swimmer, markingError };
    store.setState({ rhythm: rhythmOf(swim) });
    reader.read(asked);
  };
  const ask = (): void => {
    store.setState({ behind: true });
    cancel ??= soon(() => {
      cancel = null;
      read();
    });
  };
  read();
  const unsubscribe = [
    document.store.subscribe((state, before) => {
      if (state.swim !== before.swim) ask();
    }),
    known.subscribe((now, before) => {
      if (now.swimmer !== before.swimmer || now.markingError !== before.markingError) ask();
    }),
  ];
  return {
    store,
    close() {
      cancel?.();
      reader.close();
      for (const stop of unsubscribe) stop();
    },
  };
}
