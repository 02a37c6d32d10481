import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Swim } from '#core/swim-file/swim-schema';
import { createStepHistory, type HistoryState, type StepHistory } from '../documents/step-history';

interface DocumentState extends Omit<HistoryState<Swim>, 'value'> {
  readonly swim: Swim;
}

/** The swim under review: changed by named commands only, every step can be undone. */
export interface SwimDocument extends StepHistory<Swim> {
  readonly store: StoreApi<DocumentState>;
  swim(): Swim;
}

export function createSwimDocument(initial: Swim): SwimDocument {
  const store = createStore<DocumentState>(() => ({
    swim: initial,
    undoName: null,
    redoName: null,
    inGesture: false,
  }));
  const swim = (): Swim => store.getState().swim;
  const history = createStepHistory<Swim>(swim, ({ value, ...rest }) =>
    store.setState({ swim: value, ...rest }),
  );
  return { store, swim, ...history };
}
