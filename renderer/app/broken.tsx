import { useState } from 'react';
import { brokenReport } from './broken-report';
import { appWords } from '#core/words/app';

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
      <h1>{appWords('somethingSubmarkBroke')}</h1>
      <p>{appWords('yourMarksSafe')}</p>
      <div className="dialog-foot">
        <button type="button" className="primary" onClick={onAgain}>
          {appWords('openAgain')}
        </button>
        {onShelf && (
          <button type="button" onClick={onShelf}>
            {appWords('backShelf')}
          </button>
        )}
      </div>
      <details>
        <summary>{appWords('report')}</summary>
        <p>{appWords('allReportHolds')}</p>
        <pre>{report}</pre>
        <button type="button" onClick={copy}>
          {appWords('copyReport')}
        </button>{' '}
        <output>
          {copied === 'yes' && appWords('copied')}
          {copied === 'refused' && appWords('windowMayNot')}
        </output>
      </details>
    </main>
  );
}
