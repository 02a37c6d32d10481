import type { BrowserWindow, PowerSaveBlocker } from 'electron';

/** Milliseconds after which work counts as long: what ends sooner would only flicker. Our own. */
const longAfterMs = 600;

type Shares = readonly (number | null)[];

/**
 * Shows in the task bar how far long work is, and keeps the computer awake while it runs: the host's jobs and what the
 * page does by itself.
 */
export class TaskBar {
  private readonly work = new Map<'host' | 'page', Shares>();
  private begun: ReturnType<typeof setTimeout> | null = null;
  private blocker: number | null = null;

  constructor(
    private readonly window: Pick<BrowserWindow, 'setProgressBar' | 'isDestroyed'>,
    private readonly power: Pick<PowerSaveBlocker, 'start' | 'stop'>,
  ) {}

  tell(from: 'host' | 'page', shares: Shares): void {
    this.work.set(from, shares);
    const all = [...this.work.values()].flat();
    if (all.length === 0) this.rest();
    else if (this.blocker !== null) this.show(all);
    else
      this.begun ??= setTimeout(() => {
        this.begun = null;
        this.blocker = this.power.start('prevent-app-suspension');
        this.show([...this.work.values()].flat());
      }, longAfterMs);
  }

  /** Nothing is at work any more, or the window goes. */
  rest(): void {
    if (this.begun) clearTimeout(this.begun);
    this.begun = null;
    if (this.blocker === null) return;
    this.power.stop(this.blocker);
    this.blocker = null;
    if (!this.window.isDestroyed()) this.window.setProgressBar(-1);
  }

  private show(all: Shares): void {
    if (this.window.isDestroyed()) return;
    const known = all.filter((share) => share !== null);
    // more than 1: under way, nobody can tell how far
    if (known.length === 0) this.window.setProgressBar(2, { mode: 'indeterminate' });
    else this.window.setProgressBar(known.reduce((sum, share) => sum + share, 0) / known.length);
  }
}
