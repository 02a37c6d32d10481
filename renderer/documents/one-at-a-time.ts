/** One piece of work that is due now or later, and never done twice at once. */
export interface OneAtATime {
  /** Does the work now, or after the one under way if more is due by then; resolves when it has ended. */
  start(): Promise<void>;
  /** Does it after so many milliseconds; a later call takes an earlier one's place. */
  schedule(wait: number): void;
  /** Drops what is scheduled, and waits for the work under way. */
  pause(): Promise<void>;
  /** Nothing is scheduled any more. */
  close(): void;
}

export function oneAtATime(work: () => Promise<void>, isDue: () => boolean): OneAtATime {
  let running: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let closed = false;

  const unschedule = (): void => {
    if (timer) clearTimeout(timer);
    timer = null;
  };
  const start = (): Promise<void> => {
    unschedule();
    if (running) return running.then(() => (!isDue() || closed ? undefined : start()));
    if (!isDue()) return Promise.resolve();
    running = work().finally(() => {
      running = null;
    });
    return running;
  };
  return {
    start,
    schedule(wait) {
      unschedule();
      if (!closed) timer = setTimeout(() => void start(), wait);
    },
    async pause() {
      unschedule();
      if (running) await running;
    },
    close() {
      closed = true;
      unschedule();
    },
  };
}
