import { useState } from 'react';
import { brokenReport } from './broken-report';

interface Props {
  readonly error: unknown;
  readonly screen: string;
  readonly onAgain: () => void;
  /** Null where the coach is on the shelf already. */
  readonly onShelf: (() => void) | null;
}

/** A bug was met: marks are in the library and the window's journal, so opening again brings them back. */
export function Broken({ error, screen, onAgain, onShelf }: Props) {
  const [copied, setCopied] = useState<'no' | 'yes' | 'refused'>('no');
  const report = brokenReport({ error, screen, agent: navigator.userAgent });
  const copy = (): void => {
    navigator.clipboard.writeText(report).then(
      () => setCopied('yes'),
      () => setCopied('refused'),
    );
  };
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
        <summary>Report it</summary>
        <p>
          This is all a report holds: no names, no film, no marks, no addresses. Nothing is sent by itself;
          copy it to whoever looks after Submark.
        </p>
        <pre>{report}</pre>
        <button type="button" onClick={copy}>
          Copy the report
        </button>{' '}
        <output>
          {copied === 'yes' && 'Copied.'}
          {copied === 'refused' && 'This window may not copy: select the lines above and copy them.'}
        </output>
      </details>
    </main>
  );
}
