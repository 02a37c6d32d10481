import type { WindowRequest } from '#core/host-contract/operations/window-operations';

/** Milliseconds the page may take to save before the program ends. Our default: a save takes some 10 ms. */
const saveWithinMs = 2000;

type Unnumbered = WindowRequest extends infer Each
  ? Each extends WindowRequest
    ? Omit<Each, 'number'>
    : never
  : never;

/**
 * What the window wants of its page, in order, until the page has said that it took it. The page asks and waits, so that
 * nothing is lost while it is not there yet, and no channel leads into it.
 */
export class WindowLink {
  private requests: readonly WindowRequest[] = [];
  private last = 0;
  private answer: ((requests: readonly WindowRequest[]) => void) | null = null;
  private saving: { readonly number: number; readonly done: () => void } | null = null;
  /** A page has been there: it may hold what is not saved. */
  private met = false;

  ask(request: Unnumbered): void {
    this.last += 1;
    this.requests = [...this.requests, { ...request, number: this.last } as WindowRequest];
    this.answer?.(this.requests);
    this.answer = null;
  }

  /** Has the page save what is unsaved; resolves when it has, or did not in time, as a page that hangs never does. */
  save(withinMs = saveWithinMs): Promise<void> {
    if (!this.met) return Promise.resolve();
    return new Promise((resolve) => {
      const late = setTimeout(resolve, withinMs);
      this.saving = {
        number: this.last + 1,
        done: () => {
          clearTimeout(late);
          resolve();
        },
      };
      this.ask({ kind: 'save' });
    });
  }

  next(after: number): Promise<readonly WindowRequest[]> {
    this.met = true;
    // a page that has just been loaded has nothing unsaved
    if (this.saving && (after === 0 || after >= this.saving.number)) {
      this.saving.done();
      this.saving = null;
    }
    // whoever asked before is a page that is gone
    this.answer?.([]);
    this.answer = null;
    this.requests =
      // a page that has just been loaded: a command was meant for the one before it, files are still to be opened
      after === 0
        ? this.requests.filter(({ kind }) => kind === 'files')
        : this.requests.filter(({ number }) => number > after);
    if (this.requests.length > 0) return Promise.resolve(this.requests);
    return new Promise((resolve) => {
      this.answer = resolve;
    });
  }

  /** Lets go of the page that waits. */
  close(): void {
    this.answer?.([]);
    this.answer = null;
  }
}
