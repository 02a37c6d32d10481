import type { WindowWish } from '#core/host-contract/operations/window-operations';

type Unnumbered = WindowWish extends infer Each
  ? Each extends WindowWish
    ? Omit<Each, 'number'>
    : never
  : never;

/**
 * What the window wants of its page, in order, until the page has said that it took it. The page asks and waits, so that
 * nothing is lost while it is not there yet, and no channel leads into it.
 */
export class WindowLink {
  private wishes: readonly WindowWish[] = [];
  private last = 0;
  private answer: ((wishes: readonly WindowWish[]) => void) | null = null;

  wish(wish: Unnumbered): void {
    this.last += 1;
    this.wishes = [...this.wishes, { ...wish, number: this.last } as WindowWish];
    this.answer?.(this.wishes);
    this.answer = null;
  }

  next(after: number): Promise<readonly WindowWish[]> {
    // whoever asked before is a page that is gone
    this.answer?.([]);
    this.answer = null;
    this.wishes =
      // a page that has just been loaded: a command was meant for the one before it, files are still to be opened
      after === 0
        ? this.wishes.filter(({ kind }) => kind === 'files')
        : this.wishes.filter(({ number }) => number > after);
    if (this.wishes.length > 0) return Promise.resolve(this.wishes);
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
