import type { FallbackProps } from 'react-error-boundary';

/** A bug was met: marks are in the library and the window's journal, so opening again brings them back. */
export function Broken({ error, resetErrorBoundary }: FallbackProps) {
  const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return (
    <main className="broken" role="alert">
      <h1>Something in Submark broke</h1>
      <p>Your marks are safe: every change is kept as it is made. Open the screen again to go on.</p>
      <button type="button" className="primary" onClick={resetErrorBoundary}>
        Open again
      </button>
      <details>
        <summary>For a report (no names in it)</summary>
        <pre>{words}</pre>
      </details>
    </main>
  );
}
