import { useState } from 'react';
import { cardWords } from '#core/swim-file/card-words';
import { Dialog } from '../ui/dialog';
import { bytesWords } from '../swims/fact-words';
import type { Bundles } from './use-bundles';
import { shelfWords } from '#core/words/shelf';

type How = 'both' | 'replace';

const count = (many: number, one: string): string => `${many} ${one}${many === 1 ? '' : 's'}`;

/** What came in a bundle, and what to do when the swim is on the shelf already. */
export function BundleDialog({ bundles }: { readonly bundles: Bundles }) {
  const [how, setHow] = useState<How>('both');
  const { state, keep, leave } = bundles;
  switch (state.kind) {
    case 'none':
      return null;
    case 'checking':
      return (
        <Dialog title={shelfWords('swimBundle')} onCancel={() => undefined}>
          <output>{shelfWords('checking', { name: state.name })}</output>
        </Dialog>
      );
    case 'refused':
      return (
        <Dialog title={shelfWords('notTaken', { name: state.name })} onCancel={leave}>
          <p role="alert" className="message message-trouble">
            {state.words}
          </p>
          <footer className="dialog-foot">
            <button type="button" className="primary" data-first-focus onClick={leave}>
              {shelfWords('close')}
            </button>
          </footer>
        </Dialog>
      );
    case 'arrived': {
      const { card, there, bytes, eventCount, postureCount } = state.bundle;
      const { title, facts } = cardWords(card);
      return (
        <Dialog title={title} onCancel={leave}>
          <p>
            {[
              ...facts,
              count(eventCount, 'event'),
              count(postureCount, shelfWords('bodyLine')),
              bytesWords(bytes),
            ].join(' · ')}
          </p>
          <p className="caution">{shelfWords('everyFileBundle')}</p>
          {there && (
            <fieldset>
              <legend>
                {there.same ? shelfWords('swimShelfAlready') : shelfWords('swimShelfAlreadyOther')}
              </legend>
              <label className="bundle-how">
                <input type="radio" name="how" checked={how === 'both'} onChange={() => setHow('both')} />
                {shelfWords('keepBoth')}
              </label>
              <label className="bundle-how">
                <input
                  type="radio"
                  name="how"
                  checked={how === 'replace'}
                  onChange={() => setHow('replace')}
                />
                {shelfWords('replaceOneHere')}
              </label>
            </fieldset>
          )}
          <footer className="dialog-foot">
            <button
              type="button"
              className="primary"
              data-first-focus
              onClick={() => void keep(there ? how : 'new')}
            >
              {shelfWords('putShelf')}
            </button>
            <button type="button" onClick={leave}>
              {shelfWords('leaveOut')}
            </button>
          </footer>
        </Dialog>
      );
    }
  }
}
