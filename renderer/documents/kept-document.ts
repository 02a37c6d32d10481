import { createStore, type StoreApi } from 'zustand/vanilla';
import { createStepHistory, type HistoryState, type StepHistory } from './step-history';

/** A document of the library other than a swim, on screen: changed by named steps, each can be undone. */
export interface KeptDocument<T> extends StepHistory<T> {
  readonly store: StoreApi<HistoryState<T>>;
  current(): T;
}

export function createKeptDocument<T extends object>(initial: T): KeptDocument<T> {
  const store = createStore<HistoryState<T>>(() => ({
    value: initial,
    undoName: null,
    redoName: null,
    inGesture: false,
  }));
  const current = (): T => store.getState().value;
  return { store, current, ...createStepHistory(current, (state) => store.setState(state)) };
}
