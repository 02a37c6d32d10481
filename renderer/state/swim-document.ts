import { applyPatches, enablePatches, type Patch, produce, produceWithPatches } from 'immer';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Swim } from '#core/swim-file/swim-schema';
import type { SwimChange, SwimCommand } from './swim-command';

enablePatches();

interface Step {
  readonly name: string;
  readonly frame: number | null;
  readonly frameBefore: number | null;
  readonly forward: readonly Patch[];
  readonly back: readonly Patch[];
}

export interface DocumentState {
  readonly swim: Swim;
  /** Name of the step undo would take back, or null when there is none; redo likewise. */
  readonly undoName: string | null;
  readonly redoName: string | null;
  /** A drag is under way: the swim shown is not a step yet, and is not saved. */
  readonly inGesture: boolean;
}

/** The swim under review: changed by named commands only, every step can be undone. */
export interface SwimDocument {
  readonly store: StoreApi<DocumentState>;
  swim(): Swim;
  /** False when the command changed nothing; then there is no step either. */
  run(command: SwimCommand): boolean;
  /** Opens a drag. Each `during` starts again from the swim as it was, so the last one is what counts. */
  begin(name: string, frame?: number): void;
  during(change: SwimChange, frame?: number): void;
  /** Keeps the drag as one step. */
  commit(): void;
  /** Leaves the swim as it was before the drag. */
  cancel(): void;
  /** The step taken back or taken again, so that the stage can show where it happened. */
  undo(): { readonly name: string; readonly frame: number | null } | null;
  redo(): { readonly name: string; readonly frame: number | null } | null;
  /** Takes another version as it is (from the disk): the history does not fit it and is dropped. */
  replace(swim: Swim): void;
}

/** Our default: more steps than a coach takes back by hand, and patches are small. */
const historyLimit = 1000;

export function createSwimDocument(initial: Swim): SwimDocument {
  const store = createStore<DocumentState>(() => ({
    swim: initial,
    undoName: null,
    redoName: null,
    inGesture: false,
  }));
  let done: Step[] = [];
  let undone: Step[] = [];
  let gesture: {
    readonly base: Swim;
    readonly name: string;
    readonly frameBefore: number | null;
    frame: number | null;
    last: SwimChange | null;
  } | null = null;

  const swim = (): Swim => store.getState().swim;
  const publish = (next: Swim): void => {
    store.setState({
      swim: next,
      undoName: done.at(-1)?.name ?? null,
      redoName: undone.at(-1)?.name ?? null,
      inGesture: gesture !== null,
    });
  };
  const keep = (
    base: Swim,
    step: Pick<Step, 'name' | 'frame' | 'frameBefore'>,
    change: SwimChange,
  ): boolean => {
    const [next, forward, back] = produceWithPatches(base, change);
    if (forward.length === 0) {
      publish(base);
      return false;
    }
    done = [...done.slice(1 - historyLimit), { ...step, forward, back }];
    undone = [];
    publish(next);
    return true;
  };
  const cancel = (): void => {
    if (!gesture) return;
    const { base } = gesture;
    gesture = null;
    publish(base);
  };
  const commit = (): void => {
    if (!gesture) return;
    const { base, last, ...step } = gesture;
    gesture = null;
    if (last) keep(base, step, last);
    else publish(base);
  };

  return {
    store,
    swim,
    run(command) {
      commit();
      const frame = command.frame ?? null;
      return keep(
        swim(),
        { name: command.name, frame, frameBefore: command.frameBefore ?? frame },
        command.change,
      );
    },
    begin(name, frame) {
      commit();
      gesture = { base: swim(), name, frame: frame ?? null, frameBefore: frame ?? null, last: null };
      publish(swim());
    },
    during(change, frame) {
      if (!gesture) throw new Error('a drag changes the swim only between begin and commit');
      gesture.last = change;
      if (frame !== undefined) gesture.frame = frame;
      publish(produce(gesture.base, change));
    },
    commit,
    cancel,
    undo() {
      cancel();
      const step = done.at(-1);
      if (!step) return null;
      done = done.slice(0, -1);
      undone = [...undone, step];
      publish(applyPatches(swim(), step.back as Patch[]));
      return { name: step.name, frame: step.frameBefore };
    },
    redo() {
      cancel();
      const step = undone.at(-1);
      if (!step) return null;
      undone = undone.slice(0, -1);
      done = [...done, step];
      publish(applyPatches(swim(), step.forward as Patch[]));
      return step;
    },
    replace(next) {
      gesture = null;
      done = [];
      undone = [];
      publish(next);
    },
  };
}
