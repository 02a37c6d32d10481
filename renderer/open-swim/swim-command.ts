import type { Draft } from 'immer';
import type { Swim } from '#core/swim-file/swim-schema';

/** An edit in place of a draft swim. */
export type SwimChange = (draft: Draft<Swim>) => void;

/** One named step of the document: what undo and redo speak of. */
export interface SwimCommand {
  /** Lower case, in the imperative, as in "Undo: move kick top". */
  readonly name: string;
  readonly change: SwimChange;
  /** Frame the step leads to, and the one it came from when that differs: redo and undo show them. */
  readonly frame?: number;
  readonly frameBefore?: number;
}
