import { applyPatches, type Draft, enablePatches, type Patch, produce, produceWithPatches } from 'immer';

enablePatches();

/** An edit in place of a draft. */
export type Change<T> = (draft: Draft<T>) => void;

interface Step {
  readonly name: string;
  readonly frame: number | null;
  readonly frameBefore: number | null;
  readonly forward: readonly Patch[];
  readonly back: readonly Patch[];
}

export interface HistoryState<T> {
  readonly value: T;
  /** Name of the step undo would take back, or null when there is none; redo likewise. */
  readonly undoName: string | null;
  readonly redoName: string | null;
  /** A drag is under way: what is shown is not a step yet, and is not saved. */
  readonly inGesture: boolean;
}

/** A document that is changed by named steps only, each of which can be taken back. */
export interface StepHistory<T> {
  /** False when the change changed nothing; then there is no step either. */
  run(command: {
    readonly name: string;
    readonly change: Change<T>;
    readonly frame?: number;
    readonly frameBefore?: number;
  }): boolean;
  /** Opens a drag. Each `during` starts again from the value as it was, so the last one is what counts. */
  begin(name: string, frame?: number): void;
  during(change: Change<T>, frame?: number): void;
  /** Keeps the drag as one step. */
  commit(): void;
  /** Leaves the value as it was before the drag. */
  cancel(): void;
  /** The step taken back or taken again, so that the screen can show where it happened. */
  undo(): { readonly name: string; readonly frame: number | null } | null;
  redo(): { readonly name: string; readonly frame: number | null } | null;
  /**
   * Changes what is found out and not decided, without a step: undo takes back what the coach did, around it. False in mid-drag.
   */
  amend(change: Change<T>): boolean;
  /** Takes another version as it is (from the disk): the history does not fit it and is dropped. */
  replace(value: T): void;
}

/** Our default: more steps than a coach takes back by hand, and patches are small. */
const historyLimit = 1000;

/** The steps of one document; `publish` is told every state, `current` is the value of the last one told. */
export function createStepHistory<T extends object>(
  current: () => T,
  publishState: (state: HistoryState<T>) => void,
): StepHistory<T> {
  let done: Step[] = [];
  let undone: Step[] = [];
  let gesture: {
    readonly base: T;
    readonly name: string;
    readonly frameBefore: number | null;
    frame: number | null;
    last: Change<T> | null;
  } | null = null;

  const publish = (value: T): void => {
    publishState({
      value,
      undoName: done.at(-1)?.name ?? null,
      redoName: undone.at(-1)?.name ?? null,
      inGesture: gesture !== null,
    });
  };
  const keep = (base: T, step: Pick<Step, 'name' | 'frame' | 'frameBefore'>, change: Change<T>): boolean => {
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
    run({ name, change, frame = null, frameBefore = frame }) {
      commit();
      return keep(current(), { name, frame, frameBefore }, change);
    },
    begin(name, frame) {
      commit();
      gesture = { base: current(), name, frame: frame ?? null, frameBefore: frame ?? null, last: null };
      publish(current());
    },
    during(change, frame) {
      if (!gesture) throw new Error('a drag changes a document only between begin and commit');
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
      publish(applyPatches(current(), step.back as Patch[]));
      return { name: step.name, frame: step.frameBefore };
    },
    redo() {
      cancel();
      const step = undone.at(-1);
      if (!step) return null;
      undone = undone.slice(0, -1);
      done = [...done, step];
      publish(applyPatches(current(), step.forward as Patch[]));
      return step;
    },
    amend(change) {
      if (gesture) return false;
      publish(produce(current(), change));
      return true;
    },
    replace(next) {
      gesture = null;
      done = [];
      undone = [];
      publish(next);
    },
  };
}
