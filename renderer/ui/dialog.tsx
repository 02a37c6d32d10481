import { type ReactNode, useEffect, useId, useRef } from 'react';
import { createPortal } from 'react-dom';

interface Props {
  readonly title: string;
  /** Esc, or the system's own way to close a dialog. The owner decides whether it closes. */
  readonly onCancel: () => void;
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** A modal dialog: the browser keeps the focus in it and gives it back to where it was. */
export function Dialog({ title, onCancel, wide = false, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const element = dialog.current;
    if (!element?.open) element?.showModal();
    // the browser takes the first control there is, which is not always the one wanted
    element?.querySelector<HTMLElement>('[data-first-focus]')?.focus({ preventScroll: true });
    return () => element?.close();
  }, []);
  // out of the screen that asks, so that its own style stays out of the dialog
  return createPortal(
    <dialog
      ref={dialog}
      className={wide ? 'dialog dialog-wide' : 'dialog'}
      aria-labelledby={heading}
      onCancel={(event) => {
        event.preventDefault();
        onCancel();
      }}
    >
      <h1 id={heading}>{title}</h1>
      {children}
    </dialog>,
    document.body,
  );
}
