import { type InputHTMLAttributes, useCallback, useEffect, useRef, useState } from 'react';

interface Props<T>
  extends Omit<InputHTMLAttributes<HTMLInputElement>, 'value' | 'onChange' | 'onBlur' | 'children'> {
  readonly value: T;
  readonly onKeep: (value: T) => void;
}

interface FieldProps<T> extends Props<T> {
  readonly textOf: (value: T) => string;
  /** Undefined: what is typed is not finished, or not valid; the document stays as it is. */
  readonly readOf: (text: string) => T | undefined;
}

/** Quiet time after which what was typed becomes one step; our default. */
const quiet = 600;

/**
 * A field of a document that can be undone: what is typed becomes one step when the coach pauses or leaves the field,
 * not one a letter. What can't be read turns the field invalid and changes nothing.
 */
export function KeptField<T>({ value, onKeep, textOf, readOf, ...rest }: FieldProps<T>) {
  const [typed, setTyped] = useState<string | null>(null);
  const waiting = useRef<{ readonly timer: number; readonly keep: () => void } | null>(null);
  const settle = useCallback((): void => {
    const now = waiting.current;
    waiting.current = null;
    if (!now) return;
    window.clearTimeout(now.timer);
    now.keep();
  }, []);
  // a field that goes while something typed still waits keeps it
  useEffect(() => settle, [settle]);
  const shown = typed ?? textOf(value);
  const read = readOf(shown);
  return (
    <input
      {...rest}
      value={shown}
      aria-invalid={(typed !== null && read === undefined) || undefined}
      onChange={(event) => {
        const text = event.target.value;
        setTyped(text);
        if (waiting.current) window.clearTimeout(waiting.current.timer);
        waiting.current = null;
        const next = readOf(text);
        if (next === undefined) return;
        waiting.current = {
          timer: window.setTimeout(settle, quiet),
          keep: () => {
            if (textOf(next) !== textOf(value)) onKeep(next);
          },
        };
      }}
      onBlur={() => {
        settle();
        setTyped(null);
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Enter') return;
        settle();
        setTyped(null);
      }}
    />
  );
}

const same = (text: string): string => text;

/** A line of text. */
export function KeptText(props: Props<string>) {
  return <KeptField {...props} textOf={same} readOf={same} />;
}

interface NumberProps extends Props<number | null> {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
  /** Whether the field may be left empty, which is null. */
  readonly mayBeEmpty?: boolean;
}

/** A number between two ends; null where it may be left empty. */
export function KeptNumber({ least, most, whole = false, mayBeEmpty = false, ...props }: NumberProps) {
  return (
    <KeptField
      inputMode={whole ? 'numeric' : 'decimal'}
      autoComplete="off"
      {...props}
      textOf={(value) => (value === null ? '' : String(value))}
      readOf={(text) => {
        if (text.trim() === '') return mayBeEmpty ? null : undefined;
        const value = Number(text.trim().replace(',', '.'));
        const fits = Number.isFinite(value) && value >= least && value <= most;
        return fits && (!whole || Number.isInteger(value)) ? value : undefined;
      }}
    />
  );
}
