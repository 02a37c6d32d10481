import type { Draft } from 'immer';
import type { Swim } from '#core/swim-file/swim-schema';

/** An edit in place of a draft swim. */
export type SwimChange = (draft: Draft<Swim>) => void;

/** One named step of the document: what undo and redo speak of. */
export interface SwimCommand {
  /** Lower case, in the imperative, as in "Undo: move kick top". */
  readonly name: string;
  readonly change: SwimChange;
  /** Frame the step is about; undo and redo bring it back on the stage. */
  readonly frame?: number;
}
