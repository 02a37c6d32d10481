import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Reading } from '#core/measures/reading';
import type { Swimmer } from '#core/swim-file/squad-schema';
import type { CoachFile } from '#core/swim-file/coach-file';
import type { Swim } from '#core/swim-file/swim-schema';
import type { MarkingError } from '#core/uncertainty/marking-error';
import type { ScoreRhythm } from '../score/score-rhythm';
import type { SwimDocument } from '../state/swim-document';

/** What the marks give: pure functions of the swim, never stored. */
export interface Derived {
  readonly readings: readonly Reading[];
  readonly rhythm: ScoreRhythm;
}

/** What is known beside the marks: who swims, and how well the coach marks (null: assumed). */
export interface Known {
  readonly swimmer: Swimmer | null;
  readonly markingError: MarkingError | null;
  /** What the marking error was measured from; null until it has been read. */
  readonly coach: CoachFile | null;
}

export type Derive = (swim: Swim, swimmer: Swimmer | null, markingError: MarkingError | null) => Derived;

export interface ReadingsState extends Derived {
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
  readonly derive: Derive;
  /** Runs a job before the next picture is drawn; jobs asked for meanwhile are one. */
  readonly soon: (job: () => void) => () => void;
  readonly clock: () => number;
}

/** Keeps the readings in step with the marks: at most one computation a screen picture, even during a drag. */
export function createReadingsStore(options: ReadingsOptions): ReadingsStore {
  const { document, known, derive, soon, clock } = options;
  const compute = (): ReadingsState => {
    const start = clock();
    const { swimmer, markingError } = known.getState();
    const derived = derive(document.swim(), swimmer, markingError);
    return { ...derived, tookMs: clock() - start };
  };
  const store = createStore<ReadingsState>(compute);
  let cancel: (() => void) | null = null;
  const ask = (): void => {
    cancel ??= soon(() => {
      cancel = null;
      store.setState(compute());
    });
  };
  const unsubscribe = [
    document.store.subscribe((state, before) => {
      if (state.swim !== before.swim) ask();
    }),
    known.subscribe(ask),
  ];
  return {
    store,
    close() {
      cancel?.();
      for (const stop of unsubscribe) stop();
    },
  };
}
