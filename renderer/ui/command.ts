/**
 * One thing the coach can do, called alike by key, button and menu. `keys` are tinykeys patterns, e.g. "q",
 * "Shift+ArrowLeft", "$mod+z".
 */
export interface Command {
  readonly id: string;
  /** Sentence case, as on the button. */
  readonly label: string;
  readonly keys: readonly string[];
  /** Keys as told to the coach, when they are read elsewhere than by tinykeys. */
  readonly told?: readonly string[];
  /** How it relates to the document: one undo step, a view change, or never undoable. */
  readonly kind: 'undoable' | 'view' | 'never';
  readonly enabled?: () => boolean;
  /** `held`: run again because its key is held down. */
  run(held?: boolean): void | Promise<void>;
}
