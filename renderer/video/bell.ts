/** Lets one wait until it is rung. Ringing while nobody waits does nothing. */
export interface Bell {
  wait(): Promise<void>;
  ring(): void;
}

export function createBell(): Bell {
  let rung: (() => void) | null = null;
  return {
    wait: () =>
      new Promise((resolve) => {
        rung = resolve;
      }),
    ring: () => rung?.(),
  };
}
