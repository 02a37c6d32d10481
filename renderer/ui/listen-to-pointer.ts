/** What a drawing does with mouse, pen, touch and wheel, and with Escape in the middle of a drag. */
export interface PointerHandlers {
  down(event: PointerEvent): void;
  move(event: PointerEvent): void;
  up(event: PointerEvent): void;
  /** The system took the pointer away. */
  cancel(event: PointerEvent): void;
  leave?(event: PointerEvent): void;
  wheel(event: WheelEvent): void;
  /** Escape was pressed; true where there was something to give up: nobody else hears of the key then. */
  giveUp(): boolean;
}

/** Listens until the answer is called. */
export function listenToPointer(
  element: HTMLElement | SVGElement,
  { down, move, up, cancel, leave, wheel, giveUp }: PointerHandlers,
): () => void {
  const stop = new AbortController();
  const { signal } = stop;
  const on = <K extends 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel' | 'pointerleave'>(
    kind: K,
    heard: (event: PointerEvent) => void,
  ): void => (element as HTMLElement).addEventListener(kind, heard, { signal });
  on('pointerdown', down);
  on('pointermove', move);
  on('pointerup', up);
  on('pointercancel', cancel);
  if (leave) on('pointerleave', leave);
  (element as HTMLElement).addEventListener('wheel', wheel, { passive: false, signal });
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Escape' && giveUp()) event.stopPropagation();
    },
    { capture: true, signal },
  );
  return () => stop.abort();
}
