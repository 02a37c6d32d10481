interface Props {
  readonly error: unknown;
  readonly onAgain: () => void;
  /** Null where the coach is on the shelf already. */
  readonly onShelf: (() => void) | null;
}

/** A bug was met: marks are in the library and the window's journal, so opening again brings them back. */
export function Broken({ error, onAgain, onShelf }: Props) {
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return (
    <main className="broken" role="alert">
      <h1>Something in Submark broke</h1>
      <p>Your marks are safe: every change is kept as it is made. Open the screen again to go on.</p>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onAgain}>
          Open again
        </button>
        {onShelf && (
          <button type="button" onClick={onShelf}>
            Back to the shelf
          </button>
        )}
      </div>
      <details>
        <summary>What to put into a report</summary>
        <pre>{words}</pre>
      </details>
    </main>
  );
}
