import { useCallback, useEffect, useRef } from 'react';

/** A step button that repeats while it is held, as a held key does. */
export function StepButton(props: {
  /** `held`: again, as the button is held down. */
  readonly onStep: (held: boolean) => void;
  readonly sign: '◀' | '▶' | null;
  readonly words: string;
  readonly title: string;
  readonly minor?: boolean;
}) {
  const { onStep } = props;
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const stop = useCallback((): void => {
    if (timer.current) clearTimeout(timer.current);
    timer.current = null;
  }, []);
  useEffect(() => stop, [stop]);
  const press = (): void => {
    onStep(false);
    const again = (): void => {
      onStep(true);
      timer.current = setTimeout(again, 60);
    };
    timer.current = setTimeout(again, 380);
  };
  return (
    <button
      type="button"
      className={props.minor ? 'step minor' : 'step'}
      title={props.title}
      aria-label={props.title}
      onPointerDown={(event) => event.button === 0 && press()}
      onPointerUp={stop}
      onPointerLeave={stop}
      onPointerCancel={stop}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onStep(event.repeat);
      }}
    >
      {props.sign === '◀' && '◀ '}
      <span className={props.sign ? 'wide-words' : undefined}>{props.words}</span>
      {props.sign === '▶' && ' ▶'}
    </button>
  );
}
